# What a band promises, in the same words wherever one stands.
# $cars: count
# $city: share
# $highway: share
band-promise = A band is made to hold nine in ten measured cars. Of { $cars } cars certified in the US it held { $city } in the
    city and { $highway } on the highway, each band made without the car’s own group of makers; the saving itself was
    measured on none of them.

# $runs: count
# $worth: count
band-narrowed = What is printed of the car, or what it shows, narrows the band: the { $runs } sampled cars count by how near
    they come to it, and are worth { $worth } that all count alike.
