import { ambientPressure, dryAirDensity } from '../../src/physics/atmosphere.ts';
import {
	compressorOutletTemperature,
	cooledTemperature,
	correctedFlow,
	pressureRatio,
} from '../../src/physics/compressor.ts';
import { fahrenheit, foot, psi, published } from './published.ts';

published({
	what: 'compressor outlet in K by inlet K, pressure ratio, efficiency',
	source: 'python3-fluids 1.0.22: isentropic_T_rise_compression',
	obtained: 'computed',
	within: { rel: 1e-6, why: 'same closed form' },
	rows: [
		[298.15, 1.68, 0.7, 366.2031],
		[298.15, 1.68, 0.65, 371.438],
		[298.15, 2.021, 0.7, 392.986],
		[305, 2.361, 0.72, 422.8487],
		[300, 3, 0.75, 447.4952],
	],
	found: (inlet, ratio, efficiency) => compressorOutletTemperature(inlet!, ratio!, efficiency!),
});

published({
	what: 'compressor outlet in K by inlet K, pressure ratio, efficiency',
	source: 'Cengel & Cimbala, Fluid Mechanics, Example 12-1',
	obtained: 'read',
	within: { abs: 0.1, why: 'last printed digit' },
	rows: [[286.8, 8, 1, 519.5]],
	found: (inlet, ratio, efficiency) => compressorOutletTemperature(inlet!, ratio!, efficiency!),
});

published({
	what: 'gas turbine compressor outlet in K by inlet K, pressure ratio, efficiency',
	source: 'textbook companion, thermal engineering, example 21.5: its inputs and formula',
	obtained: 'computed',
	within: { abs: 0.1, why: 'last printed digit' },
	rows: [
		[300, 4, 1, 445.8],
		[300, 4, 0.8, 482.25],
	],
	found: (inlet, ratio, efficiency) => compressorOutletTemperature(inlet!, ratio!, efficiency!),
});

published({
	what: 'pressure ratio by boost psi, cooler loss psi, ambient psia, inlet loss psi',
	source: 'definition, worked by hand',
	obtained: 'computed',
	within: { rel: 1e-9, why: 'arithmetic' },
	rows: [
		[14.7, 0, 14.7, 0, 2],
		[15, 1, 14.5, 0.25, 30.5 / 14.25],
		[10, 2, 12, 0, 2],
	],
	found: (boost, cooler, ambient, inlet) =>
		pressureRatio({
			manifold: (ambient! + boost!) * psi,
			coolerLoss: cooler! * psi,
			ambient: ambient! * psi,
			inletLoss: inlet! * psi,
		}),
});

published({
	what: 'air after the cooler in degF by cooling air degF, entering air degF, effectiveness',
	source: 'definition of effectiveness, worked by hand',
	obtained: 'computed',
	within: { rel: 1e-9, why: 'arithmetic' },
	rows: [
		[80, 280, 0.7, 140],
		[95, 255, 0.65, 151],
		[75, 235, 0.75, 115],
	],
	found: (cold, hot, effectiveness) =>
		((cooledTemperature(fahrenheit(cold!), fahrenheit(hot!), effectiveness!) - 273.15) * 9) / 5 + 32,
});

// The definition is referred to 288.15 K and 101.325 kPa in the source; moving to 298.15 K and 100 kPa is the factor below.
published({
	what: 'corrected flow in lb/min by flow in lb/min, inlet K, inlet kPa, on the standard day at sea level',
	source: 'corrected flow, w sqrt(T/288.15)/(P/101.325), worked by hand',
	obtained: 'computed',
	within: { rel: 1e-9, why: 'arithmetic' },
	rows: [
		[50, 288.15, 101.325, 50],
		[50, 4 * 288.15, 101.325, 100],
		[30, 288.15, 101.325 / 2, 60],
	],
	found: (flow, temperature, pressure) =>
		(flow! * correctedFlow(1, temperature!, pressure! * 1000)) / correctedFlow(1, 288.15, 101325),
});

published({
	what: 'compressor outlet in K by inlet K, pressure ratio, efficiency, on other days',
	source: 'python3-fluids 1.0.22: isentropic_T_rise_compression(T1, P1, P1 x ratio, 1.4, efficiency)',
	obtained: 'computed',
	within: { rel: 1e-12, why: 'same closed form' },
	rows: [
		[308.15, 2.1, 0.7, 412.0959311782512],
		[293.15, 1.8, 0.68, 371.98342785892055],
		[303.15, 2.6, 0.74, 431.74481309978535],
	],
	found: (inlet, ratio, efficiency) => compressorOutletTemperature(inlet!, ratio!, efficiency!),
});

published({
	what: 'pressure ratio by altitude ft, boost psi, cooler loss kPa, behind 1 kPa of inlet loss',
	source:
		'python3-fluids 1.0.22: ATMOSPHERE_1976(h).P is 99507.584, 90813.114, 81204.898 Pa; the ratio by hand from it',
	obtained: 'computed',
	within: { rel: 2e-5, why: 'exponent and radius of the atmosphere to their printed digits' },
	rows: [
		[500, 10, 7, 175455.157 / 98507.584],
		[3000, 15, 5, 199234.473 / 89813.114],
		[6000, 8, 0, 136362.956 / 80204.898],
	],
	found: (feet, boost, loss) => {
		const ambient = ambientPressure(feet! * foot);
		return pressureRatio({ manifold: ambient + boost! * psi, coolerLoss: loss! * 1000, ambient, inletLoss: 1000 });
	},
});

published({
	what: 'pressure ratio by boost psi at 14.7 psi, no losses',
	source: 'trade charts: 1.34 at 5, 1.68 at 10, 2.02 at 15, 2.36 at 20 psi',
	obtained: 'memory',
	within: { abs: 0.005, why: 'last printed digit' },
	rows: [
		[5, 1.34],
		[10, 1.68],
		[15, 2.02],
		[20, 2.36],
	],
	found: boost => pressureRatio({ manifold: (14.7 + boost!) * psi, coolerLoss: 0, ambient: 14.7 * psi, inletLoss: 0 }),
});

published({
	what: 'air over that of an unboosted engine, by cooler effectiveness: 101 to 145 kPa from 15 degC',
	source:
		'Young & Freedman, University Physics, ch. 19, problem on turbochargers and intercoolers: adiabatic, and back to 15 degC; inputs seen, answers of +29 % and +44 % from memory',
	obtained: 'memory',
	within: { abs: 0.006, why: 'printed digits' },
	rows: [
		[0, 1.29],
		[1, 1.44],
	],
	found: effectiveness => {
		const hot = compressorOutletTemperature(288.15, 145 / 101, 1);
		const cooled = cooledTemperature(288.15, hot, effectiveness!);
		return dryAirDensity(145e3, cooled) / dryAirDensity(101e3, 288.15);
	},
});

published({
	what: 'enthalpy after a regenerator in kJ/kg by cold side in, hot side in, effectiveness (the same straight law)',
	source: 'Cengel & Boles, Thermodynamics, gas turbine with regeneration, effectiveness 0.80: 605.39, 880.36, 825.37',
	obtained: 'memory',
	within: { abs: 0.01, why: 'last printed digit' },
	rows: [[880.36, 605.39, 0.8, 825.37]],
	found: (coolant, entering, effectiveness) => cooledTemperature(coolant!, entering!, effectiveness!),
});

// Whatever day a map refers to, a flow taken on that very day is its own corrected flow, and the days differ by a factor.
published({
	what: 'lb/min as a map for 298.15 K and 100 kPa shows it, by actual lb/min, K, kPa',
	source:
		'w sqrt(theta) / delta, from three reference days: 288.15 K and 101.325 kPa (standard day), 302.78 K and 96.18 kPa (545 degR, 13.95 psi, trade), 298.15 K and 100 kPa; the factors by hand',
	obtained: 'computed',
	within: { abs: 5e-4, why: 'printed digits' },
	rows: [
		[40, 298.15, 100, 40],
		[40, 288.15, 101.325, 38.8096],
		[40, 302.78, 96.18, 41.9105],
		[52, 308.15, 95, 55.6472],
	],
	found: (flow, temperature, pressure) => correctedFlow(flow!, temperature!, pressure! * 1000),
});
