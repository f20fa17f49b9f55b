// Answers follow typing. A form with data-try posts itself there on every change, never more than one request at a
// time, and the newest text wins. The answer replaces what is inside #results, which stands outside the form, so focus
// and caret never move. Without this script the second button of the form does the same with a new page.
"use strict";
(() => {
	// On narrow screens the pages stand in one line; the one that is open is moved into sight.
	for (const a of document.querySelectorAll("nav a[aria-current]")) a.parentElement.scrollLeft = a.offsetLeft - a.parentElement.offsetLeft - 8;
	// A menu closes with Escape, and where something else is pressed; the focus goes back to what opened it.
	document.addEventListener("keydown", e => {
		const menu = e.key === "Escape" && document.activeElement.closest("details.menu[open]");
		if (menu) { menu.open = false; menu.querySelector("summary").focus(); }
	});
	document.addEventListener("click", e => {
		for (const menu of document.querySelectorAll("details.menu[open]")) if (!menu.contains(e.target)) menu.open = false;
	});
	// The menu of the variants says what each comes to: asked for when it is opened, and each time anew.
	document.addEventListener("toggle", async e => {
		const made = e.target.open && e.target.matches(".menu") && e.target.querySelector('form[action$="/variants"]');
		if (!made) return;
		try {
			const says = await (await fetch(made.action + "/said")).json();
			for (const a of e.target.querySelectorAll("nav a")) {
				const say = says[a.getAttribute("href")], note = a.querySelector("small") || document.createElement("small");
				note.textContent = say;
				if (say) a.append(note);
			}
		} catch { /* the names are enough */ }
	}, true);
	// Sections that were opened stay open when the page comes back, in this window.
	const sections = document.querySelectorAll("details.section"), key = "open " + location.pathname.replace(/\/try$/, "");
	try {
		const kept = JSON.parse(sessionStorage.getItem(key));
		for (const d of sections) if (kept && kept[d.id] !== undefined) d.open = kept[d.id] || d.querySelector("[aria-invalid]") !== null;
	} catch { /* a window that keeps nothing */ }
	for (const d of sections) d.addEventListener("toggle", () => {
		try {
			sessionStorage.setItem(key, JSON.stringify({...JSON.parse(sessionStorage.getItem(key)), [d.id]: d.open}));
		} catch { /* the same */ }
	});
	// A link to a field opens the closed section that holds it.
	const reveal = () => {
		const at = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
		if (!at) return;
		for (let d = at.closest("details:not([open])"); d; d = d.parentElement.closest("details:not([open])")) d.open = true;
		at.scrollIntoView({block: "center"});
		if (at.matches("input, select, textarea")) at.focus({preventScroll: true});
	};
	addEventListener("hashchange", reveal);
	reveal();
	document.addEventListener("click", e => { // the same link twice changes no address
		const a = e.target.closest && e.target.closest('a[href*="#f-"]');
		if (a && a.hash === location.hash && a.pathname === location.pathname) reveal();
	});
	const form = document.querySelector("form[data-try]"), results = document.getElementById("results");
	const focus = document.querySelector("[data-focus]");
	if (focus) focus.focus();
	let busy = false, again = false;
	if (!results) return;
	follow();
	addEventListener("many:done", follow);
	if (!form) return;
	const said = document.getElementById("said"), reasons = document.getElementById("reasons");

	form.addEventListener("input", ask);
	form.addEventListener("change", ask);

	// The numbers as they were saved: those that typing moves say what they were. A save makes the newest the saved ones.
	let saved = numbers();
	function numbers() {
		const all = new Map();
		for (const n of results.querySelectorAll("[data-number]")) all.set(n.dataset.number, plain(n));
		return all;
	}
	addEventListener("live:saved", async () => {
		while (busy) await new Promise(done => setTimeout(done, 50));
		saved = numbers();
	});

	async function ask() {
		if (busy) { again = true; return; }
		busy = true;
		do {
			again = false;
			await once();
			if (!again) await follow();
		} while (again);
		busy = false;
	}

	async function once() {
		dispatchEvent(new Event("live:ask")); // what the form holds now goes out
		try {
			const answer = await fetch(form.dataset.try, {
				method: "POST", body: new URLSearchParams(new FormData(form)), headers: {"X-Part": "results"},
			});
			const text = await answer.text();
			if (again && answer.status === 422) return; // still typing
			if (answer.ok) swap(text);
			else if (answer.status === 422) refuse(text);
			else tell("The answer could not be computed.");
		} catch {
			tell("The program does not answer. Is its window still open?");
		}
	}

	// swap shows new results: open parts stay open, and a number that changed says what it was.
	function swap(html) {
		const fresh = document.createElement("template");
		fresh.innerHTML = html;
		keepOpen(results, fresh.content);
		for (const piece of fresh.content.querySelectorAll("[data-swap]")) {
			const place = document.getElementById(piece.dataset.swap);
			piece.remove();
			if (!place) continue;
			keepOpen(place, piece);
			place.replaceChildren(...piece.childNodes);
		}
		const before = saved;
		for (const n of fresh.content.querySelectorAll("[data-number]")) {
			const was = before.get(n.dataset.number);
			if (was === undefined || was === plain(n)) continue;
			n.classList.add("changed");
			const note = document.createElement("small");
			note.className = "was";
			note.textContent = "was " + was;
			n.append(note);
		}
		for (const part of fresh.content.querySelectorAll("[data-follow]")) { // that of before stays until the new one is there
			const old = document.getElementById(part.id);
			if (old) part.replaceChildren(...old.childNodes);
		}
		keepCharts(fresh.content);
		const typing = document.activeElement, top = typing.getBoundingClientRect().top;
		results.replaceChildren(fresh.content);
		if (!CSS.supports("overflow-anchor", "auto")) scrollBy(0, typing.getBoundingClientRect().top - top); // the answer may stand over the form
		results.classList.remove("stale");
		peek();
		if (reasons) reasons.replaceChildren();
		const headline = results.querySelector("[data-headline]");
		hear([...document.querySelectorAll("#band [data-say]"), headline].map(n => n ? plain(n) : "").join(" ").trim()); // the danger first
		dispatchEvent(new Event("live:swap"));
	}

	// What follows the answer: parts that take longer or weigh more come one after the other, and only for the newest text.
	async function follow() {
		for (const part of results.querySelectorAll("[data-follow]")) {
			try {
				const answer = await fetch(part.dataset.follow, form && part.dataset.get === undefined
					? {method: "POST", body: new URLSearchParams(new FormData(form)), headers: {"X-Part": "results"}}
					: {headers: {"X-Part": "results"}});
				if (again) return;
				if (!answer.ok) continue; // the part of before stays
				const fresh = document.createElement("template");
				fresh.innerHTML = await answer.text();
				if (matchMedia("(max-width: 40rem)").matches) for (const d of fresh.content.querySelectorAll("details.fold")) d.open = false;
				keepOpen(part, fresh.content);
				keepCharts(fresh.content);
				part.replaceChildren(fresh.content);
				dispatchEvent(new Event("live:part"));
			} catch { /* its link stays */ }
		}
	}

	function keepOpen(old, content) {
		for (const d of old.querySelectorAll("details[id]")) {
			const twin = content.querySelector("#" + CSS.escape(d.id));
			if (twin) twin.open = d.open;
		}
	}

	// A chart that is already drawn moves over into the new results and only gets new numbers.
	function keepCharts(content) {
		for (const el of content.querySelectorAll("[data-chart][id]")) {
			const drawn = document.getElementById(el.id);
			if (drawn) el.replaceWith(drawn);
		}
	}

	// The short answer over the form, on narrow screens, says what the answer says.
	function peek() {
		const line = document.getElementById("peek"), headline = results.querySelector("[data-headline]");
		if (!line) return;
		line.classList.remove("stale");
		if (headline) line.querySelector("[data-peek-headline]").textContent = headline.textContent.trim();
		for (const n of line.querySelectorAll("[data-peek]")) {
			const is = results.querySelector('.head [data-number="' + n.dataset.peek + '"]');
			if (is) n.textContent = plain(is);
		}
	}

	function refuse(html) {
		const line = document.getElementById("peek");
		if (line) line.classList.add("stale");
		results.classList.add("stale");
		if (reasons) reasons.innerHTML = html;
		tell("These are the answers from before: something in the form cannot be taken.");
	}

	function plain(n) {
		const copy = n.cloneNode(true);
		for (const w of copy.querySelectorAll(".was")) w.remove();
		return copy.textContent.trim().replace(/\s+/g, " ");
	}

	// tell shows a line and has it read out; hear has it only read out, as it stands in the answer already.
	function tell(text) {
		if (said && said.textContent !== text) said.textContent = text;
	}
	function hear(text) {
		if (!said || said.textContent === text) return;
		const line = document.createElement("span");
		line.className = "quiet";
		line.textContent = text;
		said.replaceChildren(line);
	}
})();
