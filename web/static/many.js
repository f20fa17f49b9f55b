// A long search comes bit by bit. A form or link with data-many asks for it: a bar says how many are done, the results so far
// stand below it, and a button stops the work and leaves them. data-many on the results themselves goes on at once. What is
// counted stands in data-noun of the bar's row. Without this script the same address gives the page when all is done.
"use strict";
(() => {
	const results = document.getElementById("many-results"), work = document.getElementById("many-work");
	if (!results || !work) return;
	const bar = document.getElementById("many-bar"), done = document.getElementById("many-done"), said = document.getElementById("many-said");
	const form = document.querySelector("form[data-many]"), noun = work.dataset.noun;
	let at = null;

	if (form) form.addEventListener("submit", e => {
		e.preventDefault();
		run(form.action + "?" + new URLSearchParams(new FormData(form)));
	});
	document.addEventListener("click", e => {
		const a = e.target.closest && e.target.closest("a[data-many]");
		if (!a || e.ctrlKey || e.metaKey || e.shiftKey) return;
		e.preventDefault();
		run(a.href);
	});
	document.getElementById("many-stop").addEventListener("click", () => at && at.abort());
	addEventListener("popstate", () => location.reload());

	async function run(address) {
		if (at) at.abort();
		const mine = at = new AbortController();
		const url = new URL(address);
		url.pathname += "/many";
		work.hidden = false;
		bar.removeAttribute("value");
		done.textContent = "";
		said.textContent = "";
		let shown = 0, whole = false;
		try {
			const answer = await fetch(url, {signal: mine.signal});
			if (!answer.ok) throw new Error(answer.status);
			const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
			for (let rest = "", part; !(part = await reader.read()).done;) {
				const lines = (rest + part.value).split("\n");
				rest = lines.pop();
				for (const line of lines) {
					const l = JSON.parse(line);
					bar.max = l.of;
					bar.value = l.done;
					done.textContent = l.done + " of " + l.of;
					if (l.html) {
						results.innerHTML = l.html;
						shown = l.done;
					}
					if (!l.url) continue;
					whole = true;
					if (l.url !== location.pathname + location.search) history.pushState(null, "", l.url);
					agree(new URL(l.url, location).searchParams);
				}
			}
			said.textContent = whole ? shown + " " + noun + " are done." : "The program stopped in between.";
		} catch {
			if (at !== mine) return; // another took its place
			said.textContent = mine.signal.aborted ? (shown ? "Stopped. Below are the first " + shown + " " + noun + "." : "Stopped.") : "The " + noun + " could not be worked out.";
		}
		work.hidden = true;
		at = null;
		dispatchEvent(new Event("many:done"));
	}

	if (results.dataset.many) run(new URL(results.dataset.many, location).href);

	// The form shows what the address says.
	function agree(asked) {
		if (!form) return;
		for (const box of form.querySelectorAll("input[type=checkbox]")) box.checked = asked.getAll(box.name).includes(box.value);
		form.elements.n.value = asked.get("n");
	}
})();
