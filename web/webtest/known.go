package webtest

import "duskweight/web/formtest"

// EachKnown is that of formtest, for tests that have a whole site.
var EachKnown = formtest.EachKnown
