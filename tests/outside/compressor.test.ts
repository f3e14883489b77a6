import {
	compressorOutletTemperature,
	cooledTemperature,
	correctedFlow,
	pressureRatio,
} from '../../src/physics/compressor.ts';
import { fahrenheit, psi, published } from './published.ts';

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
