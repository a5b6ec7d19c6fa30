package rules.fixing.unplugged_solid_wall_test

import data.rules.fixing.unplugged_solid_wall as rule

results(screws) := found if {
	found := rule.results with input.fixings as [{"id": "E1", "screws": screws}]
}

into(what) := [{"what": what, "count": 4, "depth": 32}]

plugged(bit) := {"into": into("masonry"), "plug_stated": true, "plug_bit": bit}

expected(kind, bit) := {{"kind": kind, "subject": "E1", "values": {"count": 4, "bit": bit}}}

open(missing) := {{"kind": "open", "subject": "E1", "missing": missing}}

test_fires_without_plug if results({"into": into("masonry"), "plug_stated": false}) == expected("fail", "no plug")

test_fires_with_another_bit if {
	results(plugged("wood")) == expected("fail", "wood")
	results(plugged("metal")) == expected("fail", "metal")
}

test_passes if results(plugged("masonry")) == expected("pass", "masonry")

test_open_where_bit_unsaid if {
	results({"into": into("masonry"), "plug_stated": true}) == open("which bit the holes are drilled with")
}

test_open_where_wall_unsaid if {
	results({"into": into("unsaid"), "plug_stated": false}) == open("what the wall is made of")
	results({"into": into("unsaid"), "plug_stated": true, "plug_bit": "wood"}) == open("what the wall is made of")
}

test_other_backgrounds_are_no_subject if {
	results({"into": into("wood"), "plug_stated": false}) == set()
	results({"into": into("leaf"), "plug_stated": false}) == set()
	results({"into": [], "plug_stated": false}) == set()
}

test_piece_without_screws_is_no_subject if {
	found := rule.results with input.fixings as [{"id": "E1", "bead": {"zigzag": 300}}]
	found == set()
}
