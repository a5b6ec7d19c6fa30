package rules.services.accessories_unlisted_test

import data.rules.services.accessories_unlisted as rule

wall := {"id": "east", "at": "/walls/east", "on": "east", "width": 3640, "height": 2390, "services_stated": false, "area": 8.7, "covered": 7.1}

results(over) := found if {
	found := rule.results with input.walls as [object.union(wall, over)]
}

test_open_where_unsaid if {
	results({}) == {{
		"kind": "open", "subject": "east",
		"missing": "which switches, sockets and other accessories are on the wall",
	}}
}

test_passes if results({"services_stated": true}) == {{"kind": "pass", "subject": "east"}}

test_boundary if {
	count(results({"covered": 0.01})) == 1
	count(results({"covered": 0.01, "services_stated": true})) == 1
	results({"covered": 0}) == set()
}

test_bare_wall_is_no_subject if results({"covered": 0, "services_stated": true}) == set()
