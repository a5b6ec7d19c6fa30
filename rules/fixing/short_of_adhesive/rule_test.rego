package rules.fixing.short_of_adhesive_test

import data.rules.fixing.short_of_adhesive as rule

results(facts) := found if {
	found := rule.results with input as facts
		with data.limits as {"fixing.adhesive_waste": 0.1}
}

adhesive := {
	"id": "adhesive", "at": "/order/cartridges", "on": "", "length": 79577.47,
	"volume": 2250, "cartridge": 290, "ordered": 2320, "cartridges": 8,
}

changed(over) := results({"adhesive": object.union(adhesive, over)})

without(names) := results({"adhesive": object.remove(adhesive, names)})

expected(kind, ordered, values) := {{
	"kind": kind, "subject": "adhesive", "measured": ordered, "limit": "fixing.adhesive_waste",
	"values": values,
}}

open(missing) := {{"kind": "open", "subject": "adhesive", "missing": missing}}

test_fires if changed({}) == expected("fail", 2320, {"need": 2475, "cartridges_needed": 9, "cartridges": 8})

test_passes if {
	changed({"ordered": 2900, "cartridges": 10}) == expected("pass", 2900, {"need": 2475, "cartridges_needed": 9, "cartridges": 10})
}

test_boundary if {
	just := {"volume": 2000, "cartridge": 275, "ordered": 2200, "cartridges": 8}
	changed(just) == expected("pass", 2200, {"need": 2200, "cartridges_needed": 8, "cartridges": 8})
	beyond := object.union(just, {"volume": 2000.01})
	changed(beyond) == expected("fail", 2200, {"need": 2200, "cartridges_needed": 9, "cartridges": 8})
}

test_none_ordered_fires if {
	changed({"ordered": 0, "cartridges": 0}) == expected("fail", 0, {"need": 2475, "cartridges_needed": 9, "cartridges": 0})
}

test_open_where_bead_unsaid if {
	without({"volume"}) == open("how thick the bead is")
	without({"volume", "cartridge", "ordered", "cartridges"}) == open("how thick the bead is")
}

test_open_where_cartridge_unsaid if {
	without({"cartridge", "ordered"}) == open("what one cartridge holds, the same for all runs")
}

test_open_where_order_unsaid if without({"ordered", "cartridges"}) == open("how many cartridges are ordered")

test_nothing_glued_is_no_subject if results({}) == set()
