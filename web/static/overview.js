// Sliders beside the fields of the overview: a slider writes into its field, the field moves its slider. Asking for the
// answer is live.js.
"use strict";
for (const slide of document.querySelectorAll("[data-slides]")) {
	const field = document.getElementById(slide.dataset.slides);
	slide.addEventListener("input", () => { field.value = slide.value; });
	const follow = () => {
		const v = parseFloat(field.value.replace(",", "."));
		if (isFinite(v)) slide.value = v;
	};
	field.addEventListener("input", follow);
	follow();
}

// The day can be played: its moments one after the other, for two seconds each. It starts on a press only, waits when it is
// pressed again, and ends when nobody sees it. With reduced motion there is no play: the four moments stand side by side.
function playDay(figure) {
	const moments = [...figure.querySelectorAll(".moments li")], still = matchMedia("(prefers-reduced-motion: reduce)");
	if (moments.length < 2) return;
	const play = document.createElement("button"), said = document.createElement("span");
	play.type = "button";
	play.className = "small play-day";
	said.className = "quiet";
	said.setAttribute("role", "status");
	let at = 0, timer = 0;
	const show = n => {
		figure.classList.toggle("playing", n >= 0);
		moments.forEach((li, i) => li.classList.toggle("now", i === n));
		said.textContent = n >= 0 ? moments[n].querySelector("p").textContent.trim() : "";
	};
	const stop = (n, word) => {
		clearTimeout(timer);
		timer = 0;
		at = n;
		play.textContent = word;
	};
	const step = () => {
		if (at >= moments.length) { stop(0, "Play the day"); show(-1); return; }
		show(at++);
		timer = setTimeout(step, 2000);
	};
	play.addEventListener("click", () => {
		if (timer) { stop(at, "Go on"); return; }
		play.textContent = "Pause";
		step();
	});
	const obey = () => {
		play.hidden = still.matches;
		if (still.matches) { stop(0, "Play the day"); show(-1); }
	};
	document.addEventListener("visibilitychange", () => { if (document.hidden && timer) stop(at, "Go on"); });
	still.addEventListener("change", obey);
	stop(0, "Play the day");
	obey();
	figure.querySelector("figcaption").append(" ", play, said);
}
const findDay = () => {
	const figure = document.querySelector("#day");
	if (figure && !figure.querySelector(".play-day")) playDay(figure);
};
addEventListener("live:swap", findDay);
findDay();
