# What stands on every page: navigation, the answer line, the foot.

# What a page is called in the navigation, its title and what it is about.
page-your-drive = Your drive

page-your-drive-title = What does slowing down give back?

page-your-drive-about = For drivers, sellers and reporters of electric cars: describe a drive, see what its slow-downs are
    worth.

page-lift-off = Lift-off

page-lift-off-title = How strongly should lifting off slow the car?

page-lift-off-about = Lift-off strength: all the slowing on a flat road with the foot off the accelerator.

page-winter = Winter and limits

page-how = How it works

page-claim = Check a claim

page-show = Show

page-compare = Compare

page-compare-title = Your drive beside another

page-compare-about = The same road with one thing changed.

page-own-road = Your own recording

page-own-road-title = A road that was driven

page-own-road-about = A recording of a real drive in place of a described one: what the model makes of it, beside what was
    measured.

page-take-away = Take away

page-take-away-title = Take it with you

page-take-away-about = Your drive and its answer as one page to print, as files, and to open again.

page-sources = Sources and method

page-sources-about = Where every figure is from, how an answer is made, and where it holds.

# Out of sight.
page-redraw = Draw the page anew

link-in-part = Some of the link could not be used.

foot-units = Units

# $units: one of metric, us
foot-unit-system = { $units ->
    [metric] Metric
   *[us] US
}

foot-print = Print this page

# $version: text
foot-version = Brake to Battery, model version { $version }

## The answer line. Each of its variables is a word that opens its control

# $car: text
# $drive: text
# $named: yes or no
# $day: text
# $season: yes or no
# $pedal: text
# $apart: text
# $also: yes or no
answer-line = { $named ->
    [yes] A { $car } on the { $drive }
   *[no] A { $car } on a { $drive }
} { $season ->
    [yes] in { $day }
   *[no] at { $day }
} { $also ->
    [yes] with a { $pedal } and { $apart }
   *[no] with a { $pedal }
}

# $car: text
# $driven: text
answer-line-driven = A { $car } { $driven }

line-counts = All this counts in the answer. A tap takes it off.

line-change = Change it on the first page

# $car: text
line-put-in = Use them for this { $car }

# $car: text
line-class-figures = Take those of the class, { $car }, instead

line-car-class = Car class

line-car-class-help = Invented middle of each class, no real car. “Adjust the car” on the first page changes its figures.

line-drives = Start from one of four invented drives

# $about: text
# $length: quantity in km
line-drive = { $about } { $length } in all.

# $length: quantity in km
line-own-drive = Your own drive, { $length } in all. Pick one above to start over.

line-season = Season

line-season-help = Sets the temperature to that of the season; what each season’s is can be changed on the first page.

# What unfolds a picture on a telephone.
figure-fold = Picture, words and table
