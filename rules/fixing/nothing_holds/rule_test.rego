package rules.fixing.nothing_holds_test

import data.rules.fixing.nothing_holds as rule

fixing(over) := object.union(
	{
		"id": "E3", "at": "/runs/0/fix", "on": "east", "piece": "E3", "on_leaf": false,
		"piece_size": {"width": 600, "height": 358}, "stated": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.fixings as [fixing(over)]
}

screws(count) := {"screws": {"per_top": 2, "per_bottom": 2, "count": count, "row_gap": 258, "on_studs": false, "plug_stated": false}}

bead := {"bead": {"zigzag": 300, "centre": false, "length": 1420}}

pass := {{"kind": "pass", "subject": "E3"}}

fail := {{"kind": "fail", "subject": "E3"}}

test_fires if results({}) == fail

test_fires_on_no_screw if results(screws(0)) == fail

test_one_screw_passes if results(screws(1)) == pass

test_passes_with_bead if results(bead) == pass

test_passes_with_both if {
	results(object.union(bead, screws(4))) == pass
	results(object.union(bead, screws(0))) == pass
}

test_open_where_the_beads_are_unsaid if {
	results({"bead": {"centre": false, "length": 0}}) == {{"kind": "open", "subject": "E3", "missing": "how the adhesive is laid"}}
}

test_open_where_the_studs_are_unsaid if {
	on_studs := object.union(screws(0).screws, {"on_studs": true})
	results({"screws": on_studs}) == {{"kind": "open", "subject": "E3", "missing": "where the studs are"}}
	results({"screws": on_studs, "background": {"studs_stated": true}}) == fail
}

test_open_where_unsaid if {
	results({"stated": false}) == {{"kind": "open", "subject": "E3", "missing": "what holds the piece"}}
}
