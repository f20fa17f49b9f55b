// Ctrl+Z takes back the last change of the project, Ctrl+Shift+Z and Ctrl+Y do it again: as the buttons on top do, and only
// where no field has the focus, for there the keys belong to the text.
"use strict";
document.addEventListener("keydown", e => {
	if (!(e.ctrlKey || e.metaKey) || e.altKey || e.defaultPrevented) return;
	const key = e.key.toLowerCase(), verb = key === "z" ? (e.shiftKey ? "redo" : "undo") : key === "y" && !e.shiftKey ? "redo" : "";
	if (!verb || document.activeElement.matches("input, textarea, select, [contenteditable]")) return;
	const form = document.querySelector(`[data-step=${verb}]`);
	if (!form || form.hidden) return;
	e.preventDefault();
	form.requestSubmit();
});
