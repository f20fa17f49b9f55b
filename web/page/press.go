package page

const PressNeed = "need"

const PressFree = "free"
