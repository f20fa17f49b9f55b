// Leaving a field saves when the whole form is valid. A form with data-save posts itself to its own action and reads a
// short answer; a refused value changes nothing in the design, its text is kept, and its field is marked with the reason.
// Without this script the button saves.
"use strict";
(() => {
	const form = document.querySelector("form[data-save]");
	if (!form) return;
	const note = form.querySelector("[data-saved]"), revision = form.elements.namedItem("revision");
	let busy = null, again = false, stale = false;

	form.addEventListener("change", e => {
		const field = e.target.closest(".field");
		if (field && e.target.type !== "file") field.dataset.touched = "";
		start();
	});
	form.addEventListener("submit", e => {
		if (!busy) return;
		e.preventDefault();              // wait for the number of the save that is under way
		const button = e.submitter;
		busy.then(() => form.requestSubmit(button));
	});

	function start() {
		if (stale) return;
		if (busy) { again = true; return; }
		busy = (async () => {
			do {
				again = false;
				await save();
			} while (again && !stale);
			busy = null;
		})();
	}

	async function save() {
		try {
			const answer = await fetch(form.action, {
				method: "POST", keepalive: true, body: new URLSearchParams(new FormData(form)), headers: {Accept: "application/json"},
			});
			const got = await answer.json();
			if (answer.ok) {
				if (revision && got.revision !== undefined) renew(revision.value, got.revision);
				step("undo", got.undo);
				step("redo", got.redo);
				settle(got.remarks || {});
				heads(got.heads || {});
				say(got.say);
				dispatchEvent(new Event("live:saved"));
			} else if (answer.status === 422) {
				mark(got.problems || []);
				say(refusal(got.problems || []));
			} else if (answer.status === 409) {
				stale = true;
				say("Changed in another window meanwhile. Press the button to see both versions.");
			} else {
				say(got.say || "Not saved.");
			}
		} catch {
			say("Not saved: the program does not answer. Is its window still open?");
		}
	}

	// renew gives the new revision to every form of the page about the same thing: what is asked beside the form, buttons.
	function renew(was, now) {
		const [thing] = new URL(form.action).pathname.match(/^\/projects\/\d+(\/variants\/\d+)?/) || [""];
		for (const other of document.querySelectorAll("form input[name=revision]")) {
			const at = new URL(other.form.action).pathname;
			if (other.form === form || other.value === was && (at === thing || at.startsWith(thing + "/"))) other.value = now;
		}
	}

	// step tells the bar on top what undo and redo would do now.
	function step(verb, now) {
		const bar = document.querySelector(`[data-step=${verb}]`);
		if (!bar || !now) return;
		bar.elements.namedItem("seq").value = now.seq;
		bar.querySelector("[data-what]").textContent = now.what;
		bar.querySelector("button").title = now.what;
		bar.hidden = now.seq === "";
	}

	// refusal says why nothing was saved: one field by its name, else how many.
	function refusal(problems) {
		if (problems.length === 1) return "Not saved yet. " + problems[0].label + ": " + problems[0].say + " Your text is kept.";
		return "Not saved yet: " + problems.length + " values cannot be used, " + problems[0].label + " first. Your text is kept.";
	}

	// mark marks the refused fields, each with its reason.
	function mark(problems) {
		unmark();
		for (const problem of problems) {
			const input = document.getElementById(problem.id), field = input && input.closest(".field");
			if (!field || !input.matches("input, select, textarea")) continue;
			input.setAttribute("aria-invalid", "true");
			field.classList.add("has-problem");
			const p = document.createElement("p");
			p.className = "problem";
			p.textContent = problem.say;
			notes(field, input).prepend(p);
		}
	}

	function unmark() {
		for (const el of form.querySelectorAll("[aria-invalid]")) el.removeAttribute("aria-invalid");
		for (const el of form.querySelectorAll(".has-problem")) el.classList.remove("has-problem");
		for (const el of form.querySelectorAll(".problem")) el.remove();
	}

	// settle takes back the marks of an earlier refusal.
	function settle(remarks) {
		unmark();
		for (const el of form.querySelectorAll(".stored")) el.remove();
		for (const f of form.querySelectorAll(".field[data-touched]")) { // typed over or confirmed: it is the user's own now
			delete f.dataset.touched;
			f.classList.remove("is-typical", "is-catalog", "is-measured");
			for (const el of f.querySelectorAll(".origin, .confirm, .offer, .remark")) el.remove();
			const input = f.querySelector("input, select, textarea");
			if (input && remarks[input.id]) remark(f, input, remarks[input.id]);
		}
		const summary = document.querySelector(".summary");
		if (summary) summary.remove();
		document.title = document.title.replace(/^Error: /, "");
	}

	// heads tells in the line of each section what is known now.
	function heads(lines) {
		for (const [id, line] of Object.entries(lines)) {
			const summary = document.querySelector(`#${CSS.escape(id)} > summary`);
			if (!summary) continue;
			const brief = summary.querySelector(".brief"), count = summary.querySelector(".count");
			if (brief && brief.textContent !== line.brief) brief.textContent = line.brief;
			if (!count) continue;
			const typical = count.querySelector(".typicals");
			if (count.firstChild && count.firstChild.nodeType === Node.TEXT_NODE) count.firstChild.nodeValue = line.count + " ";
			else count.prepend(line.count + " ");
			if (typical) line.typical ? typical.textContent = line.typical + " typical" : typical.remove();
		}
	}

	// notes is the place under a field for what is said of it.
	function notes(field, input) {
		let under = document.getElementById(input.id + "-n");
		if (!under) {
			under = document.createElement("div");
			under.className = "notes";
			under.id = input.id + "-n";
			field.append(under);
			input.setAttribute("aria-describedby", under.id);
		}
		return under;
	}

	// remark says quietly under a field that its value is far from what is usual.
	function remark(field, input, text) {
		const p = document.createElement("p");
		p.className = "hint remark";
		p.textContent = text;
		notes(field, input).append(p);
	}

	function say(text) { if (note) note.textContent = text || ""; }
})();

// Ctrl+Z takes back the last change of the project, Ctrl+Shift+Z and Ctrl+Y do it again: as the buttons on top do, and only
// where no field has the focus, for there the keys belong to the text.
document.addEventListener("keydown", e => {
	if (!(e.ctrlKey || e.metaKey) || e.altKey || e.defaultPrevented) return;
	const key = e.key.toLowerCase(), verb = key === "z" ? (e.shiftKey ? "redo" : "undo") : key === "y" && !e.shiftKey ? "redo" : "";
	if (!verb || document.activeElement.matches("input, textarea, select, [contenteditable]")) return;
	const form = document.querySelector(`[data-step=${verb}]`);
	if (!form || form.hidden) return;
	e.preventDefault();
	form.requestSubmit();
});
