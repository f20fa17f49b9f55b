package unit

// Answer is the answer to a question of yes or no; empty where the question is open.
type Answer string

// The answers.
const (
	Yes Answer = "yes"
	No  Answer = "no"
)
