import { type Reader, rowsOf } from './reader.ts';

/** Cylinders in the order they fire: `1-5-7-2-6-3-4-8`, `15726348`. */
export const readOrder: Reader = (_, text) => {
	const run = /^\d{2,9}$/.test(text) ? [...text] : text.split(/[-,\s]+/);
	const order = run.map(Number);
	return order.every(Number.isInteger)
		? { answer: { value: order } }
		: { problem: 'Cylinder numbers in the order they fire, as 1-5-..., each once.' };
};

/** The two cylinders that share each coil: `1 6, 3 5`. */
export const readTowers: Reader = (_, text) => {
	const pairs = rowsOf(text).map(row => row.split(/[\s&+/-]+/).map(Number));
	const right = pairs.every(pair => pair.length === 2 && pair.every(Number.isInteger));
	return right
		? { answer: { value: pairs } }
		: { problem: 'Two cylinders a coil, a comma after each coil, as 1 6, 3 5.' };
};
