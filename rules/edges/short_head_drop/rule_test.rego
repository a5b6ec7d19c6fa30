package rules.edges.short_head_drop_test

import data.rules.edges.short_head_drop as rule

header := {
	"id": "east/door head, run E", "at": "/walls/east/openings/door", "on": "east", "opening": "east/door", "run": "E",
	"drop": 20, "lining_stated": true, "lining_clad": true, "lining_thickness": 24, "architrave_stays": false,
}

results(header) := found if {
	found := rule.results with input.headers as [header]
		with data.limits as {"edges.head_drop": 20}
}

but(over) := results(object.union(header, over))

kinds(over) := {result.kind | some result in but(over)}

without(name) := {result.missing | some result in results(object.remove(header, {name})); result.kind == "open"}

test_fires if {
	results(header) == {{
		"kind": "fail", "subject": "east/door head, run E", "measured": 20, "limit": "edges.head_drop",
		"values": {"need": 24, "thickness": 24},
	}}
}

test_passes if {
	but({"drop": 25}) == {{
		"kind": "pass", "subject": "east/door head, run E", "measured": 25, "limit": "edges.head_drop",
		"values": {"need": 24, "thickness": 24},
	}}
}

test_boundary_at_the_lining if {
	kinds({"drop": 24}) == {"pass"}
	kinds({"drop": 23.99}) == {"fail"}
}

test_boundary_at_the_limit if {
	kinds({"lining_thickness": 12, "drop": 20}) == {"pass"}
	kinds({"lining_thickness": 12, "drop": 19.99}) == {"fail"}
}

test_drop_of_nought_is_said if kinds({"drop": 0}) == {"fail"}

test_open_where_unsaid if {
	without("lining_thickness") == {"how thick the lining is"}
	without("drop") == {"how far the header passes below the head"}
	but({"lining_stated": false, "lining_clad": false}) == {{
		"kind": "open", "subject": "east/door head, run E",
		"missing": "whether the lining is clad",
	}}
}

test_one_question_at_a_time if count(results(object.remove(header, {"drop", "lining_thickness"}))) == 1

test_no_subject if {
	but({"lining_clad": false}) == set()
	but({"architrave_stays": true}) == set()
	but({"architrave_stays": true, "lining_stated": false}) == set()
}
