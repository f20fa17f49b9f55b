// Charts. The library is fetched only when a page holds one, after the first paint. A chart is a block of data that the
// server made; nothing in it is code.
"use strict";
(() => {
	const url = document.currentScript.dataset.library, drawn = new Map();
	const dark = matchMedia("(prefers-color-scheme: dark)");
	const tokens = {
		"fn:0": v => number(v, 0), "fn:1": v => number(v, 1), "fn:2": v => number(v, 2), "fn:3": v => figures(v, 3),
		"fn:clock": v => String(Math.floor(v)).padStart(2, "0") + ":" + String(Math.round(v % 1 * 60)).padStart(2, "0"),
	};
	let library = null;

	const number = (v, places) => Number(v).toLocaleString("en", {maximumFractionDigits: places}).replace(/,/g, "\u00a0");

	const figures = (v, n) => Number(v).toLocaleString("en", {maximumSignificantDigits: n}).replace(/,/g, "\u00a0");

	// resolve puts the few named functions of ours in place of their names, and the page's colours in place of theirs.
	function resolve(o, css) {
		for (const k in o) {
			const v = o[k];
			if (typeof v === "string" && v.startsWith("fn:")) {
				if (!tokens[v]) throw new Error("unknown formatter " + v);
				o[k] = tokens[v];
			} else if (typeof v === "string" && /^--[a-z]+$/.test(v)) {
				o[k] = css.getPropertyValue(v).trim();
			} else if (v && typeof v === "object") resolve(v, css);
		}
		return o;
	}

	function load() {
		library ??= new Promise((done, failed) => {
			const s = document.createElement("script");
			s.src = url;
			s.onload = done;
			s.onerror = failed;
			document.head.append(s);
		});
		return library;
	}

	// ink makes the words of a chart readable on the page's own ground.
	function ink(option, el) {
		const css = getComputedStyle(document.documentElement), light = el.dataset.theme === "light";
		option.backgroundColor = "transparent";
		option.textStyle = {fontFamily: "system-ui, sans-serif", ...option.textStyle};
		if (!light) option.textStyle.color = css.getPropertyValue("--ink").trim();
		return option;
	}

	// fit gives the names of the lines the rows that they take at this width.
	function fit(option, width) {
		const grid = [option.grid].flat()[0], names = [option.legend].flat()[0]?.data;
		if (!grid || !names) return option;
		let rows = 1, used = 0;
		for (const {name} of names) {
			const wide = 46 + 6.5 * name.length;
			if (used && used + wide > width - 8) { rows++; used = 0; }
			used += wide;
		}
		grid.top = 34 + 20 * rows;
		return option;
	}

	function draw() {
		for (const [el, chart] of drawn) if (!el.isConnected) { chart.dispose(); drawn.delete(el); }
		for (const el of document.querySelectorAll("[data-chart]")) {
			const data = document.getElementById(el.dataset.chart);
			if (!data || !el.clientWidth) continue; // in a closed fold: drawn when it opens
			let chart = drawn.get(el);
			if (!chart) {
				chart = echarts.init(el, dark.matches && el.dataset.theme !== "light" ? "dark" : null, {renderer: "svg"});
				drawn.set(el, chart);
			}
			chart.setOption(fit(ink(resolve(JSON.parse(data.textContent), getComputedStyle(el)), el), el.clientWidth), {notMerge: true});
		}
		document.documentElement.dataset.charts = "drawn";
	}

	// Every picture can be saved: a copy of it as it stands, with its colours written into it, as an SVG file.
	const looks = ["fill", "stroke", "stroke-width", "stroke-dasharray", "font-family", "font-size", "font-weight", "text-anchor", "dominant-baseline", "opacity", "fill-opacity"];

	function picture(svg) {
		const copy = svg.cloneNode(true), from = [svg, ...svg.querySelectorAll("*")], to = [copy, ...copy.querySelectorAll("*")];
		from.forEach((el, i) => {
			const css = getComputedStyle(el);
			for (const name of looks) to[i].setAttribute(name, css.getPropertyValue(name));
			to[i].removeAttribute("class");
			to[i].removeAttribute("style");
		});
		const box = svg.viewBox.baseVal, size = svg.getBoundingClientRect(), ground = document.createElementNS(svg.namespaceURI, "rect");
		const [x, y, w, h] = box && box.width ? [box.x, box.y, box.width, box.height] : [0, 0, size.width, size.height];
		for (const [k, v] of Object.entries({x, y, width: w, height: h, fill: getComputedStyle(svg.closest("figure")).backgroundColor})) ground.setAttribute(k, v);
		copy.prepend(ground);
		for (const [k, v] of Object.entries({xmlns: svg.namespaceURI, viewBox: [x, y, w, h].join(" "), width: size.width, height: size.height})) copy.setAttribute(k, v);
		return new XMLSerializer().serializeToString(copy);
	}

	function save(figure) {
		const svg = figure.querySelector(":scope > svg, [data-chart] svg"), link = document.createElement("a");
		if (!svg) return;
		link.href = URL.createObjectURL(new Blob([picture(svg)], {type: "image/svg+xml"}));
		link.download = figure.querySelector("figcaption").textContent.trim().toLowerCase().replace(/[^a-z0-9]+/g, "-") + ".svg";
		link.click();
		setTimeout(() => URL.revokeObjectURL(link.href), 10000);
	}

	function savers() {
		for (const figure of document.querySelectorAll("figure")) {
			const caption = figure.querySelector("figcaption");
			if (!caption || figure.closest(".paper") || figure.querySelector(".save-picture") || !figure.querySelector(":scope > svg, [data-chart]")) continue;
			const button = document.createElement("button"), of = document.createElement("span");
			button.type = "button";
			button.className = "plain save-picture";
			of.className = "quiet";
			of.textContent = ": " + caption.textContent.trim();
			button.append("Save picture", of);
			button.addEventListener("click", () => save(figure));
			figure.append(button);
		}
	}

	function start() {
		savers();
		if (!document.querySelector("[data-chart]")) return;
		requestAnimationFrame(() => setTimeout(() => load().then(draw, () => {}), 0));
	}

	addEventListener("live:swap", start);
	addEventListener("live:part", start);
	document.addEventListener("toggle", e => { if (e.target.open && e.target.querySelector("[data-chart]")) start(); }, true);
	addEventListener("resize", () => {
		for (const [el, chart] of drawn) if (!el.closest(".paper")) {
			const {grid, legend} = chart.getOption();
			chart.resize();
			if (grid) chart.setOption({grid: fit({grid, legend}, el.clientWidth).grid});
		}
	});
	addEventListener("beforeprint", () => { // on paper a chart is as wide as its column, with letters of the page's size
		const column = document.querySelector(".compare") !== null;
		if (column) for (const d of document.querySelectorAll(".cmp-more > :not([open])")) { d.open = true; d.dataset.paper = ""; }
		if (column && window.echarts) draw();
		for (const [el, chart] of drawn) if (!el.closest(".paper")) {
			const w = column ? 460 : Math.min(el.clientWidth, 620), h = column ? 210 : el.clientHeight;
			chart.resize({width: w, height: h});
			chart.getZr().flush();
			if (column) el.querySelector("svg")?.setAttribute("viewBox", `0 0 ${w} ${h}`);
		}
	});
	addEventListener("afterprint", () => {
		for (const d of document.querySelectorAll("[data-paper]")) { d.open = false; delete d.dataset.paper; }
		for (const [el, chart] of drawn) if (!el.closest(".paper")) {
			el.querySelector("svg")?.removeAttribute("viewBox");
			chart.resize({width: "auto", height: "auto"});
		}
	});
	dark.addEventListener("change", () => { for (const chart of drawn.values()) chart.dispose(); drawn.clear(); start(); });
	start();
})();
