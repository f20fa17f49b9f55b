package main

// alike are changes after which the program is the same for whoever uses it, by their key; each with its reason. They are
// not tried.
var alike = map[string]string{}
