# What rules share. A function here takes a subject (a fact with an id) and gives
# one result; a rule adds it to its results.
package rules.lib

# kind is "pass" where the test holds and "fail" where it does not.
kind(true) := "pass"

kind(false) := "fail"

# at_least holds a number against a limit that it must not be under.
at_least(subject, measured, limit_id) := {
	"kind": kind(measured >= data.limits[limit_id]),
	"subject": subject.id,
	"measured": measured,
	"limit": limit_id,
}

# at_most holds a number against a limit that it must not be over.
at_most(subject, measured, limit_id) := {
	"kind": kind(measured <= data.limits[limit_id]),
	"subject": subject.id,
	"measured": measured,
	"limit": limit_id,
}

# holds is for what is either so or not.
holds(subject, ok) := {"kind": kind(ok), "subject": subject.id}

# ask is for what only a competent person can say.
ask(subject) := {"kind": "review", "subject": subject.id}

# unsaid is for what the plan does not say; missing completes "The plan does not say ...".
unsaid(subject, missing) := {"kind": "open", "subject": subject.id, "missing": missing}

# saying adds values that the rule's texts show.
saying(result, values) := object.union(result, {"values": values})
