import type { Answer, Sheet } from '../../src/sheet/sheet.ts';
import { changed } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

const without = (ids: readonly string[]): Record<string, Answer | undefined> =>
	Object.fromEntries(ids.map(id => [id, undefined]));

/** What only a car that has made boost, or run at full load, has shown. */
export const shownByDriving = [
	'boost.logged_peak',
	'boost.lambda_logged',
	'injectors.duty_logged',
	'ignition.knock_seen',
	'ignition.blown_gap',
	'ignition.blown_boost',
	'ignition.proven_gap',
	'ignition.proven_boost',
	'fuel.pressure_under_load',
	'sensors.meter_volts_full_load',
];

/** What is inside an engine that nobody has opened. */
const inside = [
	'engine.chamber_volume',
	'engine.piston_volume',
	'engine.gasket_thickness',
	'engine.gasket_bore',
	'engine.deck_clearance',
	'engine.pistons',
	'engine.ring_gap',
	'engine.head_fasteners',
	'engine.fastener_count',
	'engine.fastener_size',
	'engine.fastener_torque',
	'engine.head_gasket',
	'engine.bearings',
	'engine.rings',
	'engine.compression_wet',
	'engine.leakdown',
];

/** What is asked under boost alone. */
const boostedOnly = [
	'sensors.meter_curve',
	'sensors.meter_scaler',
	'sensors.meter_ceiling',
	'sensors.meter_curve_loaded',
];

/** Every number measured: who has finished a car has gone round it with rule, gauge and meter. */
function measured(sheet: Sheet): Sheet {
	const answers = Object.entries(sheet.answers).map(([section, inside]) => [
		section,
		Object.fromEntries(
			Object.entries(inside).map(([name, answer]) => [
				name,
				answer.unit !== undefined && answer.known === undefined ? { ...answer, known: 'measured' } : answer,
			]),
		),
	]);
	return { ...sheet, answers: Object.fromEntries(answers) };
}

const boosted = measured(buildSheet('boosted'));
const unboosted = measured(buildSheet('unboosted'));

/** Finished, sound cars, as good shops hand them over; invented. */
export const finished: readonly (readonly [string, Sheet])[] = [
	['boosted, logs clean', boosted],
	['boosted, never boosted yet', changed(boosted, without(shownByDriving))],
	['unboosted, driven', unboosted],
	['unboosted, never driven', changed(unboosted, without(shownByDriving))],
	['unboosted, engine never opened', changed(unboosted, without([...shownByDriving, ...inside, ...boostedOnly]))],
];
