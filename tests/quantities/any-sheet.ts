import fc from 'fast-check';
import { type Question, standAlone } from '../../src/sheet/question.ts';
import { type Answer, emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import type { Kind } from '../../src/units/kinds.ts';
import { unitNamed } from '../../src/units/names.ts';
import { fromCanonical } from '../../src/units/unit.ts';

/** Which of a question's two ranges numbers are taken from. */
export type Range = 'plausible' | 'hard';

/** A sheet in which each question is answered, said to be not known, or passed over; `share` of them are answered. */
export function anySheet(questions: readonly Question[], range: Range, share = 0.8): fc.Arbitrary<Sheet> {
	const lot = fc.integer({ min: 0, max: 999 });
	const each = questions.map(question => fc.tuple(lot, anyAnswer(question, range)));
	return fc.tuple(...each).map(drawn =>
		drawn.reduce((sheet, [drawnLot, answer], index) => {
			const { id } = questions[index]!;
			if (drawnLot < 1000 * share) return withAnswer(sheet, id, answer);
			return drawnLot % 2 === 0 ? withAnswer(sheet, id, { known: 'not-known' }) : sheet;
		}, emptySheet('any')),
	);
}

/** Eight readings, points, rows: whatever the kind of the question asks, inside its range. */
function anyAnswer(question: Question, range: Range): fc.Arbitrary<Answer> {
	const choices = Object.keys(question.choices);
	const number = () => anyNumber(question.unit.us[0]!, question.of[0]!, question[range]!);
	const unit = question.of.length === 1 ? { unit: question.unit.us[0]! } : {};
	switch (question.kind) {
		case 'choice':
			return fc.constantFrom(...choices).map(value => ({ value }));
		case 'several':
			return fc.subarray(choices.filter(choice => !standAlone.includes(choice))).map(value => ({ value }));
		case 'whole': {
			// The lists of a sheet are as long as it has cylinders: 8 here, as in the lists below.
			if (question.id === 'engine.cylinders') return fc.constant({ value: 8 });
			const [min, max] = question[range]!;
			return fc.integer({ min, max }).map(value => ({ value }));
		}
		case 'per-cylinder':
			return fc.array(number(), { minLength: 8, maxLength: 8 }).map(value => ({ value, ...unit }));
		case 'firing-order':
			return fc.shuffledSubarray([1, 2, 3, 4, 5, 6, 7, 8], { minLength: 8 }).map(value => ({ value }));
		case 'pairs':
			return fc
				.shuffledSubarray([1, 2, 3, 4, 5, 6, 7, 8], { minLength: 8 })
				.map(order => ({ value: [0, 1, 2, 3].map(i => [order[i], order[i + 4]]) }));
		case 'curve':
			return anyCurve(question);
		case 'loads':
			return fc
				.array(fc.tuple(fc.constantFrom('fans', 'lamps', 'pump'), number()), { maxLength: 4 })
				.map(value => ({ value, ...unit }));
		case 'codes':
			return fc.subarray(['P0340', 'P0171', 'P1999']).map(value => ({ value }));
		case 'circuits':
			return fc
				.subarray(['check lamp', 'tachometer', 'fan'])
				.map(names => ({ value: names.map(circuit => ({ circuit, from: '', to: '', state: 'to-do' })) }));
		case 'teeth':
			return fc.constantFrom('36-1', '60-2').map(value => ({ value }));
		default:
			return number().map(value => ({ value, ...unit }));
	}
}

function anyNumber(symbol: string, kind: Kind, [low, high]: readonly [number, number]): fc.Arbitrary<number> {
	const unit = unitNamed(symbol, [kind])!;
	const ends = [fromCanonical(low, unit), fromCanonical(high, unit)];
	const [least, most] = [Math.min(...ends), Math.max(...ends)];
	// Wire gauges are whole numbers; 4/0, which is -3, is the thickest.
	if (unit.curve) return fc.integer({ min: Math.max(-3, Math.ceil(least)), max: Math.floor(most) });
	return fc.integer({ min: 0, max: 1000 }).map(step => Number((least + ((most - least) * step) / 1000).toPrecision(6)));
}

/** A meter's curve rises, a pump's falls; both have from 2 to 6 points. */
function anyCurve(question: Question): fc.Arbitrary<Answer> {
	const falls = question.id === 'fuel.pump_curve';
	const [first, step, most] = falls ? [30, 15, 90] : [0.5, 0.8, 1200];
	return fc
		.array(fc.tuple(fc.integer({ min: 10, max: 100 }), fc.integer({ min: 1, max: 100 })), {
			minLength: 2,
			maxLength: 6,
		})
		.map(steps => {
			let x = first!;
			let y = falls ? most! : 5;
			const value = steps.map(([across, up]) => {
				x += (step! * across) / 100;
				y = falls ? (y * (200 - up)) / 200 : y + (up / 100) * 300;
				return [x, y];
			});
			return { value, unit: [...question.unit.us] };
		});
}
