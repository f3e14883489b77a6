/**
 * The one script of an HTML audit. It only adds: ticks that stay in the browser under the sheet's name, and a filter by place and
 * stage. Nothing leaves the page, and without it the page is whole. Plain browser JavaScript: it is printed as it stands here.
 */
export const pageScript = `
(() => {
	'use strict';
	const all = selector => [...document.querySelectorAll(selector)];
	const tools = document.getElementById('tools');
	const says = document.getElementById('says');
	const name = 'swap-audit ticks ' + document.body.dataset.sheet;
	let ticked = new Set();
	let kept = true;
	let stored = null;
	try { stored = localStorage.getItem(name); } catch { kept = false; }
	try {
		const list = JSON.parse(stored || '[]');
		if (Array.isArray(list)) ticked = new Set(list);
	} catch { /* of another hand: the page begins with no ticks */ }
	const boxes = all('input[data-key]');
	const lines = boxes.map(box => box.closest('li'));
	const show = () => {
		for (const box of boxes) box.checked = ticked.has(box.dataset.key);
		const [place, stage] = all('#tools select').map(select => select.value);
		const open = document.getElementById('open-only').checked;
		const seen = new Set();
		for (const [index, line] of lines.entries()) {
			const { place: there, stage: then, key } = boxes[index].dataset;
			const hide = (place && place !== there) || (stage && stage !== then) || (open && ticked.has(key));
			line.hidden = Boolean(hide);
			if (!hide) seen.add(key);
		}
		for (const fold of all('details.stage')) {
			const inside = [...fold.querySelectorAll('li[hidden], li:not([hidden])')].filter(line => line.matches('.tasks > li'));
			fold.hidden = inside.length > 0 && inside.every(line => line.hidden);
			if ((place || stage) && !fold.hidden) fold.open = true;
		}
		const done = [...seen].filter(key => ticked.has(key)).length;
		says.textContent = seen.size + (seen.size === 1 ? ' line' : ' lines') + ' shown, ' + done + ' ticked. '
			+ (kept ? 'Ticks stay in this browser only; the sheet is not changed.' : 'This browser keeps no ticks for this file.');
	};
	for (const box of boxes) box.addEventListener('change', () => {
		if (box.checked) ticked.add(box.dataset.key); else ticked.delete(box.dataset.key);
		try { localStorage.setItem(name, JSON.stringify([...ticked])); } catch { kept = false; }
		show();
	});
	for (const control of all('#tools select, #open-only')) control.addEventListener('change', show);
	tools.hidden = false;
	show();
})();
`.trim();
