# Sources by name and link, what was measured, and since when a check’s range has stood.

sources-list = The sources, with links

# Of each source: its name, as a link where there is an address; when it was published, and how and when it was read.
# $name: text
# $published: text
# $read: text
# $how: one of original, abstract, copy, press, second-hand, from-memory, computed
source-cited = { $how ->
    [original] { $name } ({ $published }; read on { $read })
    [abstract] { $name } ({ $published }; the abstract alone was read, on { $read })
    [copy] { $name } ({ $published }; a copy was read, on { $read })
    [press] { $name } ({ $published }; a release or report was read, on { $read })
    [second-hand] { $name } ({ $published }; as others quote it, read on { $read })
    [from-memory] { $name } ({ $published }; from memory)
   *[computed] { $name }
}

source-undated = undated

# $how: one of original, abstract, copy, press, second-hand, from-memory, computed
source-how = { $how ->
    [original] itself
    [abstract] the abstract alone
    [copy] a copy
    [press] a release or report
    [second-hand] as others quote it
    [from-memory] from memory
   *[computed] worked out here
}

source-no-address = no address confirmed

sources-list-read = Every published figure names its sources by these rows. An address stands here only where it was seen
    to hold what is said; a source without one was read in a copy or through others, and an undated one has no date of
    its own.

sources-list-measured = Below is each number that claims are held against, with what is known of its conditions.

table-sources = Sources with link, date, and how and when each was read

table-measurements = Published numbers with what each is of, conditions, kind and source

column-published-on = Published on

column-read = Read

column-what-was-read = What was read

column-what-measured = What it measures

column-conditions = Known conditions

# $high: text
# $ruled: yes or no
measured-at-most = { $ruled ->
    [yes] at most { $high }
   *[no] up to { $high }
}

# Since when a check’s range has stood in the tests.
# $commit: text
# $date: text
check-range-set = How far off it may be has stood in the tests unmoved since commit { $commit } of { $date }.

checks-history = Whether a range was set before anybody looked is for the history of the tests to show, commit by commit:
    each check names the one since which its range has not been moved. What had been looked at before that, no history
    shows.

# A figure’s provenance, and the sources it names as links.
# $known: text
# $links: text
figure-with-links = { $known } Sources: { $links }.
