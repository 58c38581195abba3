# For print: pictures, quotes, and the page that stands in an article.

for-print = For print

print-svg = SVG

print-png = PNG

print-transparent = Without a background

# What stands on every picture that is taken away.
# $version: text
# $date: text
# $address: text
# $addressed: yes or no
print-source = { $addressed ->
    [yes] Brake to Battery, model version { $version } of { $date }, MIT licence, { $address }. An estimate, not a
        measurement.
   *[no] Brake to Battery, model version { $version } of { $date }, MIT licence. An estimate, not a measurement.
}

# A quote in two lines, each a sentence or two. `$claim` and `$reading` are without their full stops.
# $kind: one of quoted, read, made, beyond
# $claim: text
# $reading: text
# $verdict: one of holds, conditions, false, not-as-said, unjudged, close, beyond
# $version: text
print-quote-first = { $kind ->
    [quoted] By the model Brake to Battery { $version } the claim “{ $claim }” { claim-verdict }.
    [beyond] An energy model cannot judge the claim “{ $claim }” (Brake to Battery { $version }).
    [read] By the model Brake to Battery { $version } the claim “{ $claim }”, read as “{ $reading }”, { claim-verdict }.
   *[made] What was tested: { $claim }. By the model Brake to Battery { $version } it { claim-verdict }.
}

# $band: text
# $measured: text
print-quote-second = { $measured } The model gives { $band }. An estimate.

# Of a claim that the model cannot judge: what it can give.
# $instead: text
# $band: text
print-quote-second-beyond = { $instead } is what it can give: { $band }. An estimate.

print-quote-long = At length

print-files-fold = Pictures, every run, and a page for an article

print-files-about = Pictures are drawn in Liberation Sans, or Arial, which is as wide; their words stay words in SVG. Every
    run has all the figures that were drawn for it, but for a hybrid’s own. Run the command below with a row’s figures to get
    its number again; with “--run” and the row it computes any run again. The page for an
    article is one file that asks nothing of any server.

# In every row of a table of runs that hold a hybrid.
print-runs-of-hybrids = The hybrid’s own figures are not in this row; --run computes it again.

# $file: one of chart-svg, chart-clear, chart-png, chart-vega, runs, json, tornado, needs, article
print-file = { $file ->
    [chart-svg] Chart, SVG
    [chart-clear] Chart without a background, SVG
    [chart-png] Chart, PNG
    [chart-vega] Chart, Vega-Lite
    [runs] Every run, CSV
    [json] Everything, JSON
    [tornado] What moves it, SVG
    [needs] What would have to be true, SVG
   *[article] For an article, HTML
}

# The page for an article.
article-numbers = The numbers behind the picture

article-runs = Each run of the model is a car with its day and its driver.

article-low = One run in twenty gives less than

article-mid = Half of the runs give less than

article-high = One run in twenty gives more than

article-what = Part of the runs

# $unit: text
article-value = Number, { $unit }

article-value-bare = Number

print-strip = The drive as a picture, for print
