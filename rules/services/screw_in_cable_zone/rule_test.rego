package rules.services.screw_in_cable_zone_test

import data.rules.services.screw_in_cable_zone as rule

zone := {
	"id": "east below the ceiling", "at": "/walls/east", "on": "east", "why": "the top of the wall",
	"left": 0, "right": 3640, "bottom": 2240, "top": 2390, "screws": 4, "pieces": ["E1", "E2"], "deepest": 24, "depth_said": true,
}

results(zone) := found if {
	found := rule.results with input.zones as [zone]
}

kinds(over) := {result.kind | some result in results(object.union(zone, over))}

test_asks if {
	results(zone) == {{
		"kind": "review", "subject": "east below the ceiling", "related": ["E1", "E2"],
		"values": {"screws": 4, "pieces": ["E1", "E2"], "why": "the top of the wall", "deepest": 24},
	}}
}

test_asks_where_the_depth_is_unsaid if {
	results(object.union(object.remove(zone, {"deepest"}), {"depth_said": false})) == {{
		"kind": "review", "subject": "east below the ceiling", "related": ["E1", "E2"],
		"values": {"screws": 4, "pieces": ["E1", "E2"], "why": "the top of the wall"},
	}}
	kinds({"deepest": 0, "depth_said": false}) == {"review"}
}

test_boundary if {
	kinds({"deepest": 0.01}) == {"review"}
	kinds({"deepest": 0}) == {"pass"}
}

test_passes_without_screws if {
	results(object.union(object.remove(zone, {"deepest"}), {"screws": 0, "pieces": []})) == {{
		"kind": "pass", "subject": "east below the ceiling",
	}}
}

test_no_zones_no_results if count(rule.results) == 0 with input.zones as []
