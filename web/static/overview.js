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
