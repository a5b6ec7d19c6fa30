package rules.stock.no_spare_test

import data.rules.stock.no_spare as rule

boards := {"id": "oak", "panel": "oak", "needed": 14, "least": 12, "ordered": 14}

results(boards) := found if {
	found := rule.results with input.boards as [boards]
		with data.limits as {"stock.spare_from": 10}
}

but(over) := results(object.union(boards, over))

test_fires if results(boards) == {{"kind": "fail", "subject": "oak", "values": {"needed": 14}}}

test_passes if but({"ordered": 15}) == {{"kind": "pass", "subject": "oak", "values": {"needed": 14}}}

test_boundary if {
	but({"needed": 10, "ordered": 10}) == set()
	count(but({"needed": 10.01, "ordered": 11})) == 1
	but({"needed": 11, "ordered": 11}) == {{"kind": "fail", "subject": "oak", "values": {"needed": 11}}}
}

test_short_order_is_no_subject if but({"ordered": 13}) == set()

test_unsaid_order_is_no_subject if results(object.remove(boards, {"ordered"})) == set()
