// The hours of a row are painted: press an hour, or press and draw; Space and the arrow keys do the same. Each row is one tab
// stop. What is painted is handed to the form, which saves and answers; without this script it is ticked and saved.
"use strict";
(() => {
	const rows = document.getElementById("rows"), said = document.getElementById("painted");
	const cellOf = node => node && node.closest && node.closest(".h") && node.closest(".h").firstElementChild;
	const cellsOf = cell => [...cell.closest(".hours").querySelectorAll("input[type=checkbox]")];
	const late = new Map(); // hours painted since the last question went out: its answer does not know of them
	let at = "", draw = null, painted = "", wait = 0;

	// One tab stop a row: the hour that had the focus, else the first that is on.
	function stops() {
		for (const strip of rows.querySelectorAll(".hours")) {
			const cells = cellsOf(strip), stop = cells.find(c => c.id === at) || cells.find(c => c.checked) || cells[0];
			for (const c of cells) c.tabIndex = c === stop ? 0 : -1;
		}
	}
	function go(cell) {
		at = cell.id;
		for (const c of cellsOf(cell)) c.tabIndex = c === cell ? 0 : -1;
		cell.focus();
	}
	// put paints an hour. Its row says that it was painted: then its hours count, and not the older text of its open card.
	function put(cell, on) {
		cell.checked = on;
		late.set(cell.id, on);
		cell.closest(".hours").querySelector("[type=hidden]").value = "painted";
	}
	function send(cell) {
		const form = document.getElementById("edit");
		painted = cell.closest("li").querySelector("a").getAttribute("href");
		form.dispatchEvent(new Event("change")); // saves and asks, each once
	}
	function tell() { // after a second: name, hours and energy of the row
		const link = [...rows.querySelectorAll("li > a")].find(a => a.getAttribute("href") === painted);
		if (!link) return;
		const text = css => (link.parentElement.querySelector(css) || {textContent: ""}).textContent.trim();
		painted = "";
		clearTimeout(wait);
		wait = setTimeout(() => {
			said.textContent = text(".twice") || text("b") + ", " + text(".about") + ", " + text(".value b") + " a night";
		}, 1000);
	}

	rows.addEventListener("focusin", e => { if (cellOf(e.target)) go(e.target); });
	rows.addEventListener("keydown", e => {
		const cell = cellOf(e.target);
		if (!cell || e.ctrlKey || e.altKey || e.metaKey) return;
		const cells = cellsOf(cell), i = cells.indexOf(cell);
		const step = {ArrowLeft: i - 1, ArrowRight: i + 1, Home: 0, End: 23}[e.key];
		if (step !== undefined) {
			const next = cells[step];
			if (next) {
				go(next);
				if (e.shiftKey && next.checked !== cell.checked) { put(next, cell.checked); send(next); }
			}
		} else if (e.key === "ArrowUp" || e.key === "ArrowDown") {
			const strips = [...rows.querySelectorAll(".hours")];
			const strip = strips[strips.indexOf(cell.closest(".hours")) + (e.key === "ArrowUp" ? -1 : 1)];
			if (strip) go(cellsOf(strip)[i]);
		} else return;
		e.preventDefault();
	});
	rows.addEventListener("change", e => { if (cellOf(e.target)) { put(e.target, e.target.checked); send(e.target); } });

	rows.addEventListener("pointerdown", e => {
		const cell = cellOf(e.target);
		if (!cell || e.button) return;
		draw = {strip: cell.closest(".hours"), on: !cell.checked, was: cellsOf(cell).map(c => c.checked), cell};
		put(cell, draw.on);
	});
	addEventListener("pointermove", e => {
		const cell = draw && cellOf(document.elementFromPoint(e.clientX, e.clientY));
		if (cell && draw.strip.contains(cell)) put(cell, draw.on);
	});
	addEventListener("pointerup", () => {
		if (!draw) return;
		const cell = draw.cell;
		draw = null;
		go(cell);
		send(cell);
	});
	addEventListener("pointercancel", () => { // the finger scrolls the page
		if (draw) cellsOf(draw.cell).forEach((c, i) => put(c, draw.was[i]));
		draw = null;
	});
	rows.addEventListener("click", e => { if (cellOf(e.target) && e.detail) e.preventDefault(); }); // the press did it

	addEventListener("live:ask", () => { if (!draw) late.clear(); });
	document.addEventListener("input", e => { // typed after it was painted: then the text counts
		const strip = e.target.id && e.target.closest(".card-form") && rows.querySelector("[data-fields]");
		if (strip && new URLSearchParams(strip.dataset.fields).has(e.target.id)) strip.querySelector("[type=hidden]").value = "1";
	});
	addEventListener("live:swap", () => {
		for (const [id, on] of late) { // the rows are new, and older than these
			const cell = document.getElementById(id);
			if (cell) put(cell, on);
		}
		if (draw) {
			draw.cell = document.getElementById(draw.cell.id);
			draw = draw.cell && {...draw, strip: draw.cell.closest(".hours")};
		}
		const had = document.getElementById(at);
		if (had && document.activeElement === document.body) had.focus({preventScroll: true});
		stops();
		const strip = painted && rows.querySelector("[data-fields]");
		if (strip) { // the open card shows the same hours
			for (const [name, text] of new URLSearchParams(strip.dataset.fields)) {
				const field = document.getElementById(name);
				if (field) field.value = text;
			}
		}
		tell();
	});
	stops();
})();
