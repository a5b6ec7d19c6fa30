package rules.edges.cut_edge_in_view_test

import data.rules.edges.cut_edge_in_view as rule

edge := {
	"id": "E7 right edge", "at": "/runs/0", "on": "east", "piece": "E7", "side": "right", "made_by": "rip", "cut": true,
	"from": {"x": 3640, "y": 0}, "to": {"x": 3640, "y": 2390}, "length": 2390, "low": 0, "high": 2390,
	"meets": "open wall", "cover": "bare", "treatment": "none", "in_view": true,
}

results(over) := judged(object.union(edge, over))

judged(edge) := found if {
	found := rule.results with input.edges as [edge]
		with data.limits as {"edges.eye_height": 1600}
}

kinds(over) := {result.kind | some result in results(over)}

values := {"made_by": "rip"}

test_fires if results({}) == {{"kind": "fail", "subject": "E7 right edge", "values": values}}

test_passes_where_treated if {
	results({"treatment": "trim"}) == {{"kind": "pass", "subject": "E7 right edge", "values": values}}
}

test_passes_where_covered if {
	results({"meets": "corner", "cover": "covered"}) == {{"kind": "pass", "subject": "E7 right edge"}}
}

test_boundary_facing_up if {
	kinds({"side": "up", "low": 1599.99, "high": 1599.99}) == {"fail"}
	kinds({"side": "up", "low": 1600, "high": 1600}) == set()
}

test_boundary_facing_down if {
	kinds({"side": "down", "low": 1600.01, "high": 1600.01}) == {"fail"}
	kinds({"side": "down", "low": 1600, "high": 1600}) == set()
}

test_open_where_the_wall_end_is_unsaid if {
	results({"meets": "wall end", "cover": "unsaid"}) == {{
		"kind": "open", "subject": "E7 right edge",
		"missing": "what stands at this end of the wall",
	}}
}

test_open_where_cut_edges_are_unsaid if {
	judged(object.remove(edge, {"treatment"})) == {{
		"kind": "open", "subject": "E7 right edge",
		"missing": "what is done with cut edges",
	}}
}

test_no_subject if {
	results({"cut": false}) == set()
	results({"in_view": false}) == set()
	results({"meets": "open corner"}) == set()
}
