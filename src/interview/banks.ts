import { banksOf } from '../physics/firing-order.ts';
import { answerTo, type Sheet } from '../sheet/sheet.ts';
import { cylindersOf } from './state.ts';

/** The cylinders as they stand in the engine, a list a side; one list by number while the layout is not known. */
export function banksIn(sheet: Sheet): number[][] {
	const cylinders = cylindersOf(sheet);
	const layout = answerTo(sheet, 'engine.bank_layout')?.value;
	const known = layout === 'in-rows' || layout === 'odd-and-even';
	if (known && cylinders % 2 === 0) return banksOf(layout, cylinders);
	return [Array.from({ length: cylinders }, (_, index) => index + 1)];
}
