import { answerTo, type Sheet } from '../sheet/sheet.ts';
import { cylindersOf } from './state.ts';

/** The cylinders as they stand in the engine, a list a side; one list by number while the layout is not known. */
export function banksOf(sheet: Sheet): number[][] {
	const all = Array.from({ length: cylindersOf(sheet) }, (_, index) => index + 1);
	const half = all.length / 2;
	switch (answerTo(sheet, 'engine.bank_layout')?.value) {
		case 'in-rows':
			return [all.filter(cylinder => cylinder <= half), all.filter(cylinder => cylinder > half)];
		case 'odd-and-even':
			return [all.filter(cylinder => cylinder % 2 === 1), all.filter(cylinder => cylinder % 2 === 0)];
		default:
			return [all];
	}
}
