import { inch, mercuryMeter, poundForce, standardGravity } from '../defined.ts';
import { unitTable } from '../unit.ts';

const psi = poundForce / inch ** 2;

/** Gauge pressures, and differences of pressures. A plain `psi`, `bar` or `kPa` on a gauge counts from the air outside. */
export const pressure = unitTable('pressure', {
	psi: {
		factor: psi,
		partner: 'bar',
		also: ['psig', 'psi gauge', 'lb/in2', 'lbs/in2', 'lb/sq in', 'lbf/in2', 'lb', 'lbs', 'pounds'],
	},
	bar: { factor: 1e5, partner: 'psi', also: ['barg', 'bar gauge', 'bars'] },
	kPa: { factor: 1e3, partner: 'psi', also: ['kPag', 'kPa gauge'] },
	mbar: { factor: 100, partner: 'psi', also: ['mbarg', 'mbar gauge', 'millibar', 'hPa'] },
	inHg: { factor: inch * mercuryMeter, partner: 'kPa', also: ['in Hg gauge', 'inches of mercury', '"Hg'] },
	mmHg: { factor: 1e-3 * mercuryMeter, partner: 'psi', also: ['mm Hg gauge'] },
	'kg/cm2': { factor: 1e4 * standardGravity, partner: 'psi', also: ['kgf/cm2', 'kp/cm2'] },
	MPa: { factor: 1e6, partner: 'psi', also: ['MPa gauge'] },
	Pa: { factor: 1, partner: 'psi', also: ['Pa gauge'] },
});

/**
 * Pressures counted from vacuum. Where one is asked a plain `kPa` or `bar` is absolute, as sensors are labelled so;
 * a plain `psi`, `inHg` or `mmHg` is not, as those stand on gauges.
 */
export const absolutePressure = unitTable('absolute-pressure', {
	psia: { factor: psi, partner: 'kPa abs', also: ['psi abs', 'psi absolute', 'lb/in2 abs'] },
	'kPa abs': { factor: 1e3, partner: 'psia', also: ['kPa', 'kPa a', 'kPa absolute'] },
	'bar abs': { factor: 1e5, partner: 'psia', also: ['bar', 'bar a', 'bar absolute'] },
	'mbar abs': { factor: 100, partner: 'psia', also: ['mbar', 'mbar a', 'mbar absolute', 'hPa', 'hPa abs'] },
	'inHg abs': { factor: inch * mercuryMeter, partner: 'kPa abs', also: ['in Hg a', 'inHg absolute'] },
	'mmHg abs': { factor: 1e-3 * mercuryMeter, partner: 'psia', also: ['mm Hg a', 'mmHg absolute'] },
	'MPa abs': { factor: 1e6, partner: 'psia', also: ['MPa', 'MPa a', 'MPa absolute'] },
	'Pa abs': { factor: 1, partner: 'psia', also: ['Pa', 'Pa a', 'Pa absolute'] },
});
