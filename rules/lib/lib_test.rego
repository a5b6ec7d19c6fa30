package rules.lib_test

import data.rules.lib

limits := {"a.b": 10}

subject := {"id": "X1"}

test_at_least if {
	under := lib.at_least(subject, 9.99, "a.b") with data.limits as limits
	under == {"kind": "fail", "subject": "X1", "measured": 9.99, "limit": "a.b"}
	on := lib.at_least(subject, 10, "a.b") with data.limits as limits
	on.kind == "pass"
}

test_at_most if {
	over := lib.at_most(subject, 10.01, "a.b") with data.limits as limits
	over == {"kind": "fail", "subject": "X1", "measured": 10.01, "limit": "a.b"}
	on := lib.at_most(subject, 10, "a.b") with data.limits as limits
	on.kind == "pass"
}

test_holds if {
	lib.holds(subject, true) == {"kind": "pass", "subject": "X1"}
	lib.holds(subject, false) == {"kind": "fail", "subject": "X1"}
}

test_ask if lib.ask(subject) == {"kind": "review", "subject": "X1"}

test_unsaid if lib.unsaid(subject, "how wide") == {"kind": "open", "subject": "X1", "missing": "how wide"}

test_saying if {
	lib.saying(lib.ask(subject), {"n": 2}) == {"kind": "review", "subject": "X1", "values": {"n": 2}}
}
