import { expect, test } from 'vitest';
import { compressionSpread, crankingPressure } from '../../src/physics/compression.ts';
import { sweptVolume } from '../../src/physics/slider-crank.ts';
import { clearanceVolume, effectiveRatio, ratioFromVolumes } from '../../src/physics/volumes.ts';
import { psi, published } from './published.ts';

const cc = 1e-6;
const sixDigits = { rel: 1e-5, why: 'six printed digits' };

published({
	what: 'swept cm3 by bore and stroke mm',
	source: 'cylinder geometry',
	obtained: 'computed',
	within: sixDigits,
	rows: [[103.25, 92, 770.2963]],
	found: (bore, stroke) => sweptVolume(bore! / 1000, stroke! / 1000) / cc,
});

published({
	what: 'compression ratio by bore and stroke mm, clearance cm3',
	source: '(swept + clearance) / clearance',
	obtained: 'computed',
	within: sixDigits,
	rows: [[103.25, 92, 83, 10.2807]],
	found: (bore, stroke, chamber) =>
		ratioFromVolumes({
			bore: bore! / 1000,
			stroke: stroke! / 1000,
			chamber: chamber! * cc,
			piston: 0,
			gasketThickness: 0,
			gasketBore: 0.104,
			deck: 0,
		}),
});

published({
	what: 'clearance cm3 by chamber cm3, dish cm3, gasket mm on a bore of mm, deck mm on a bore of mm',
	source: 'geometry; a dish adds volume',
	obtained: 'computed',
	within: sixDigits,
	rows: [[64, 5, 1, 104, 0.5, 101.6, 81.5485]],
	found: (chamber, piston, gasket, gasketBore, deck, bore) =>
		clearanceVolume({
			bore: bore! / 1000,
			stroke: 0.09,
			chamber: chamber! * cc,
			piston: piston! * cc,
			gasketThickness: gasket! / 1000,
			gasketBore: gasketBore! / 1000,
			deck: deck! / 1000,
		}) / cc,
});

/** Only the proportions count: a stroke of 2 makes the rod its own ratio to the crank. */
const engine = (ratio: number, rodOverCrank: number) => ({ bore: 1, stroke: 2, rod: rodOverCrank, ratio });

published({
	what: 'effective compression ratio by ratio, intake closing deg, rod over crank',
	source: 'slider-crank volume where the intake closes over clearance',
	obtained: 'computed',
	within: { rel: 1e-5, why: 'printed digits' },
	rows: [
		[9, 70, 3.4, 6.89782],
		[10.5, 60, 3.3, 8.6744],
	],
	found: (ratio, closes, rod) => effectiveRatio(engine(ratio!, rod!), closes!),
});

published({
	what: 'cranking psi gauge by ratio, intake closing deg, exponent, ambient kPa; rod 3.4 cranks',
	source: 'p V^n from intake closing to top dead center',
	obtained: 'computed',
	within: { rel: 1e-4, why: 'printed digits' },
	rows: [
		[9, 50, 1.25, 101.3, 180.54],
		[9, 70, 1.25, 101.3, 149.55],
		[9, 50, 1.25, 83.4, 148.64],
		[8.5, 60, 1.2, 98, 133.77],
	],
	found: (ratio, closes, exponent, ambient) =>
		crankingPressure(ambient! * 1000, effectiveRatio(engine(ratio!, 3.4), closes!), exponent) / psi,
});

published({
	what: 'bar absolute after compression from 1 bar by ratio and exponent',
	source: 'inputs and formula of example 3.23 in a textbook companion, FOSSEE Scilab examples 443; evaluated',
	obtained: 'computed',
	within: { rel: 1e-5, why: 'six printed digits' },
	rows: [[8, 1.3, 14.9285]],
	found: (ratio, exponent) => (crankingPressure(1e5, ratio!, exponent) + 1e5) / 1e5,
});

test('105 psi with 150 is 70 %, as in the worked example of a rule (read: factory service literature)', () => {
	expect(compressionSpread([150, 105, 140, 150].map(reading => reading * psi))).toBeCloseTo(0.7, 12);
});

test('120 psi with 160 is the 75 % that two makers ask for (read: factory service literature)', () => {
	expect(compressionSpread([160 * psi, 120 * psi])).toBe(0.75);
});
