// Package migrations holds the steps of the database's schema, in order, append only. Each file sets user_version to
// its own number, so that an older program can tell a newer file without knowing what is in it.
package migrations

import "embed"

// FS holds the steps as goose reads them.
//
//go:embed *.sql
var FS embed.FS

// Newest is the number of the last step, and the user_version of a file that has taken them all.
const Newest = 3

// ApplicationID marks a database file as one of ours: "Dkwt" in ASCII.
const ApplicationID = 0x446b7774
