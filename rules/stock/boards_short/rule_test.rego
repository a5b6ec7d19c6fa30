package rules.stock.boards_short_test

import data.rules.stock.boards_short as rule

boards := {"id": "oak", "at": "/order/boards/oak", "on": "", "panel": "oak", "needed": 8, "least": 7, "ordered": 6}

results(boards) := found if {
	found := rule.results with input.boards as [boards]
}

kinds(ordered) := {result.kind | some result in results(object.union(boards, {"ordered": ordered}))}

values := {"needed": 8, "least": 7, "panel": "oak"}

test_fires if results(boards) == {{"kind": "fail", "subject": "oak", "measured": 6, "values": values}}

test_passes if {
	results(object.union(boards, {"ordered": 9})) == {{"kind": "pass", "subject": "oak", "measured": 9, "values": values}}
}

test_boundary if {
	kinds(8) == {"pass"}
	kinds(7.99) == {"fail"}
	kinds(7) == {"fail"}
}

test_none_ordered_is_said if kinds(0) == {"fail"}

test_open_where_unsaid if {
	results(object.remove(boards, {"ordered"})) == {{
		"kind": "open", "subject": "oak",
		"missing": "how many boards are ordered",
	}}
}
