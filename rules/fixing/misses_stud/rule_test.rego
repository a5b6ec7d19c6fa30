package rules.fixing.misses_stud_test

import data.rules.fixing.misses_stud as rule

results(fixing) := found if {
	found := rule.results with input.fixings as [fixing]
}

studs := {"kind": "plasterboard on studs", "lining": 12.5, "solid_wall": false, "framed": true, "studs_stated": true}

screwed(into) := {
	"id": "E1", "background": studs,
	"screws": {"count": sum([found.count | some found in into]), "into": into},
}

space := {"what": "space", "count": 2}

wood := {"what": "wood", "count": 4, "depth": 23.5}

missed := {{"kind": "fail", "subject": "E1", "values": {"count": 2}}}

test_fires if results(screwed([space])) == missed

test_fires_where_some_hit if results(screwed([space, wood])) == missed

test_passes if results(screwed([wood])) == {{"kind": "pass", "subject": "E1"}}

test_one_screw_beside_the_stud_is_enough_to_fire if {
	some result in results(screwed([{"what": "space", "count": 1}, wood]))
	result == {"kind": "fail", "subject": "E1", "values": {"count": 1}}
}

test_open_where_studs_unsaid if {
	results(screwed([{"what": "studs unsaid", "count": 4}])) == {{
		"kind": "open", "subject": "E1",
		"missing": "where the studs are",
	}}
}

test_glued_piece_is_no_subject if {
	every into in [[space], [wood], [{"what": "studs unsaid", "count": 4}]] {
		results(object.union(screwed(into), {"bead": {"zigzag": 300}})) == set()
	}
}

test_other_backgrounds_are_no_subject if {
	results(object.union(screwed([wood]), {"background": {"kind": "solid timber", "framed": false}})) == set()
	results(object.remove(screwed([{"what": "unsaid", "count": 4}]), {"background"})) == set()
}

test_piece_without_screws_is_no_subject if {
	results(screwed([])) == set()
	results({"id": "E1", "background": studs}) == set()
}
