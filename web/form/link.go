package form

// LinkView is a link with its words.
type LinkView struct{ Text, URL string }
