// One lift and one way down, 20 times as fast. It starts on a press alone, pauses, is moved by hand, and stops where nobody
// sees it. With reduced motion there is no play, only the hand.
"use strict";
(() => {
	const figure = document.querySelector("[data-trip]");
	if (!figure) return;
	const trip = JSON.parse(figure.dataset.trip), last = trip.t[trip.t.length - 1], faster = 20;
	const scene = figure.querySelector(".trip"), mass = scene.querySelector(".moves"), way = +mass.dataset.way;
	const ropes = [...scene.querySelectorAll(".grows")].map(l => [l, l.dataset.end, +l.getAttribute(l.dataset.end)]);
	const drum = scene.querySelector(".turns"), cursors = figure.querySelectorAll(".cursor"), figs = figure.querySelectorAll("[data-fig]");
	const play = figure.querySelector("[data-play]"), scrub = figure.querySelector("[data-scrub]"), clock = figure.querySelector("[data-clock]");
	const still = matchMedia("(prefers-reduced-motion: reduce)");
	let now = 0, before = 0, running = false;

	function show(t) {
		let i = 0;
		while (i + 1 < trip.t.length && trip.t[i + 1] <= t) i++;
		const next = Math.min(i + 1, trip.t.length - 1), long = trip.t[next] - trip.t[i];
		const z = trip.z[i] + (long > 0 ? (t - trip.t[i]) / long * (trip.z[next] - trip.z[i]) : 0), up = z * way;
		mass.setAttribute("transform", `translate(0 ${-up})`);
		for (const [line, end, at] of ropes) line.setAttribute(end, at - up);
		if (drum) drum.setAttribute("transform", `rotate(${up * drum.dataset.turn} ${drum.dataset.x} ${drum.dataset.y})`);
		for (const c of cursors) for (const x of ["x1", "x2"]) c.setAttribute(x, 1 + 398 * t / last);
		figs.forEach((f, n) => { f.textContent = trip.say[i][n]; });
		scene.classList.toggle("lamps", trip.lit[i]);
		const at = Math.floor(t / 60) + ":" + String(Math.floor(t % 60)).padStart(2, "0");
		clock.textContent = at + " · " + trip.say[i][4];
		scrub.value = t;
		scrub.setAttribute("aria-valuetext", clock.textContent);
	}
	function stop() {
		running = false;
		play.textContent = "Play";
	}
	function frame(time) {
		if (!running) return;
		now = Math.min(last, now + (time - before) / 1000 * faster);
		before = time;
		show(now);
		if (now >= last) stop(); else requestAnimationFrame(frame);
	}
	play.addEventListener("click", () => {
		if (running) { stop(); return; }
		if (still.matches) return;
		if (now >= last) now = 0;
		running = true;
		play.textContent = "Pause";
		before = performance.now();
		requestAnimationFrame(frame);
	});
	scrub.addEventListener("input", () => { stop(); now = +scrub.value; show(now); });
	document.addEventListener("visibilitychange", () => { if (document.hidden) stop(); });
	const obey = () => { play.hidden = still.matches; if (still.matches) stop(); };
	still.addEventListener("change", obey);
	obey();
	figure.classList.add("moving");
	figure.querySelector(".play").hidden = false;
	show(0);
})();
