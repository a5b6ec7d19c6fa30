package rules.cuts.low_strip_test

import data.rules.cuts.low_strip as rule

strip(over) := object.union(
	{
		"id": "E3 over door", "at": "/runs/0", "on": "east", "piece": "E3", "opening": "east/door", "where": "over",
		"height": 58, "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.strips as [strip(over)]
		with data.limits as {"cuts.lowest_strip": 100}
}

kinds(over) := {result.kind | some result in results(over)}

expected(kind, height) := {{
	"kind": kind, "subject": "E3 over door", "measured": height, "limit": "cuts.lowest_strip",
	"values": {"where": "over", "opening": "east/door"},
}}

test_fires if results({}) == expected("fail", 58)

test_passes if results({"height": 358}) == expected("pass", 358)

test_boundary if {
	kinds({"height": 100}) == {"pass"}
	kinds({"height": 99.99}) == {"fail"}
}

test_hidden_strip_is_no_subject if results({"in_view": false}) == set()
