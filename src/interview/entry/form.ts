import type { Question, UnitSet } from '../../sheet/question.ts';

/** The unit of a lone number as it stands behind the word Answer; nothing for a bare one. */
export function unitWords({ unit }: Question, units: UnitSet): string {
	return unit[units].filter(symbol => symbol !== '' && symbol !== '1').join(', ');
}

/** How a list is typed, with an example; null where the choices or the unit say enough. */
export function formWords(question: Question, units: UnitSet): string | null {
	const [first, second] = question.unit[units];
	switch (question.kind) {
		case 'per-cylinder':
			return `one a cylinder in ${first}, one by one or on a line; - where not measured`;
		case 'firing-order':
			return 'as 1-5-..., each cylinder once';
		case 'pairs':
			return 'two cylinders a coil, as 1 6, 3 5';
		case 'curve':
			return `points of ${first} and ${second}, as 1 35, 2 170`;
		case 'loads':
			return 'names and amps, as fans 28, pump 9; or none';
		case 'codes':
			return 'as P0340, P0171; or none';
		case 'circuits':
			return `name; from; to; done, to-do or not-used; amps; ${units === 'us' ? 'feet' : 'meters'}; a | between circuits`;
		case 'teeth':
			return 'places and missing teeth, as 36-1';
		default:
			return null;
	}
}
