# The take-away: the page on paper, and the page of the app that hands it out.

# What stands on paper.

## The side for whoever drives

# $car_on_drive: text
paper-card = A { $car_on_drive }

# $length: quantity in km
# $back: yes or no
# $day: text
# $also: list
paper-card-about = { $back ->
    [yes] { $length } there and back, on { $day }; { $also }.
   *[no] { $length }, on { $day }; { $also }.
}

# $made: text
paper-made-on = Made { $made }

paper-overleaf = The second side says what these numbers rest on.

## The side for anyone who checks

paper-checks = For anyone who checks the numbers

# $about: text
paper-title = Brake to Battery: { $about }

# $made: text
# $version: text
# $date: text
paper-made = Made { $made } · model version { $version } of { $date }

# $car_on_drive: text
# $season: yes or no
# $day: text
# $pedal: text
paper-about = A { $car_on_drive } { $season ->
    [yes] in
   *[no] at
} { $day }, with a { $pedal }.

# $car_on_drive: text
# $season: yes or no
# $day: text
# $pedal: text
# $apart: text
paper-about-apart = A { $car_on_drive } { $season ->
    [yes] in
   *[no] at
} { $day }, with a { $pedal }, { $apart }.

paper-three-shares = Three shares that are easily mixed up, from middle figures

# $share: share
paper-recovered-share = recovered share { $share } (back in the battery over out of it)

# $share: share
paper-energy-saved = energy saved { $share } (of the drive on friction brakes only)

# $share: share
paper-range-gain = range gain { $share } (from the same battery)

# $way_back: text
paper-drive-there-and-back = The drive, there and back { $way_back }
paper-drive = The drive

# $habits: text
paper-habits = { $habits }.

# $day: text
# $strength: text
paper-advised = Advised for { $day }: { $strength }.

# $strength: text
paper-set-to = Set now: { $strength }. The numbers above are worked out for that.

# $cold: text
# $grip: text
# $hills: text
# $stop: text
paper-glance = Cold battery: { $cold }; slippery road: { $grip }; full battery, hills: { $hills }; emergency stop: { $stop }.

paper-open-again = Open it again
paper-qr = QR code of the link

# $host: text
paper-open-at = Open this drive at { $host }
paper-scan = Or scan the code.
paper-paste = There is no code to scan, since this copy of Brake to Battery has no public address. Paste or type the text at the end of
    the second side into “Take away” of any Brake to Battery, or open this page’s file there.
paper-open-page = Or open this page there, or take this along:
paper-drive-file = the drive as a file
paper-assumed = What it rests on
# $figures: list
paper-also-yours = Yours too: { $figures }.

paper-reasons = The main figures and yours, low to high (middle). All of them, with reasons and what each source says, stand
    under “Sources and method” in the app.

# $low: number
# $high: share
# $cars: count
# $seed: text
paper-bands = Bands run from { $low } to { $high } of { $cars } sampled cars: for each, every figure with a low and a high is drawn
    between them (triangular distribution, Latin hypercube, seed { $seed }). What you stated is fixed. The comparison is the same
    speeds on friction brakes only.
paper-reproduced = The answer file (JSON) that comes with this page is reproduced to the byte by
paper-left-out = What is left out
paper-drive-as-text = The drive as text

# The page of the app.

take-print-heading = One card to take
take-print-words = The first side is for you, the second for anyone who checks the numbers. It holds nothing about you but what you entered.
take-print = Print
take-share = Share
take-page = The page (HTML)
take-check-heading = For those who check: answer and timeline as files
take-check-words = The answer file is reproduced to the byte by `python -m model drive FILE`. The
    timeline has one row a second.
take-answer = The answer (JSON)
take-timeline = The timeline (CSV)

take-over-heading = To another screen
take-over-scan = Scan this with a telephone, or copy the link.
take-over-qr = QR code of the link to this drive
take-over-text = This server has no public address, so there is no code to scan. Paste this text below on any other Brake to Battery,
    or take the page along: it holds the drive.

take-open-heading = Open a drive
take-open-label = Text or link
take-open-text = Open the text
take-open-file = Or a page or an answer that was taken away, or a scenario

# $car: text
# $drive: text
take-opened = Opened: { $car }, { $drive }.
take-go = Go to the drive
