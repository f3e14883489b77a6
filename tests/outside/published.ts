import { describe, expect, test } from 'vitest';

/** Values from outside the project, all of one kind and one source: the last number of a row is what is expected. */
export interface Published {
	readonly what: string;
	readonly source: string;
	/** Seen in the source; computed by the library or relation it names; or believed, with the source not opened. */
	readonly obtained: 'read' | 'computed' | 'memory';
	/** How far apart the two may be, and why that far. */
	readonly within: { readonly rel?: number; readonly abs?: number; readonly why: string };
	readonly rows: readonly (readonly number[])[];
	readonly found: (...inputs: number[]) => number;
}

/** Checks each row; the test's name carries what it is, where it is from and how that was had. */
export function published({ what, source, obtained, within, rows, found }: Published): void {
	describe(`${what} (${obtained}: ${source}; ${within.why})`, () => {
		for (const row of rows) {
			const inputs = row.slice(0, -1);
			const expected = row.at(-1)!;
			test(`${inputs.join(', ')} gives ${expected}`, () => {
				const room = (within.abs ?? 0) + (within.rel ?? 0) * Math.abs(expected);
				expect(Math.abs(found(...inputs) - expected)).toBeLessThanOrEqual(room);
			});
		}
	});
}

/** Exact by definition, in SI. */
export const inch = 0.0254;
export const foot = 0.3048;
export const mile = 1609.344;
export const poundMass = 0.45359237;
export const poundForce = 4.4482216152605;
export const psi = poundForce / inch ** 2;
export const horsepower = 550 * foot * poundForce;
export const usGallon = 231 * inch ** 3;
export const btu = 1055.05585262;
export const fahrenheit = (degrees: number) => ((degrees - 32) * 5) / 9 + 273.15;
