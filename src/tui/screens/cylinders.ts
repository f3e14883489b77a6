import { banksIn } from '../../interview/banks.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { clip, type Line, line } from '../text.ts';

/** The readings typed so far, each at its cylinder, a line a side of the engine; `..` is still to come. */
export function bankLines(text: string, sheet: Sheet, width: number): Line[] {
	// As many words as begin like a reading; whether they are good ones is shown beneath.
	const words = text.split(/[\s,;]+/).filter(word => /^(-|[\d.])/.test(word));
	return banksIn(sheet).map(bank =>
		line(clip(bank.map(cylinder => `${cylinder}: ${words[cylinder - 1] ?? '..'}`.padEnd(8)).join(' '), width), 'quiet'),
	);
}
