# What a road is called.

# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
road-name = { $surface ->
    [dry] dry road
    [wet] wet road
    [standing-water] standing water
    [snow] packed snow
    [ice] ice
   *[glazed-ice] glazed ice
}

# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
on-the-road = { $surface ->
    [dry] on a dry road
    [wet] on a wet road
    [standing-water] on standing water
    [snow] on packed snow
    [ice] on ice
   *[glazed-ice] on glazed ice
}

# In a row of roads.
# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
a-road = { $surface ->
    [dry] a dry road
    [wet] a wet road
    [standing-water] standing water
    [snow] packed snow
    [ice] ice
   *[glazed-ice] glazed ice
}
