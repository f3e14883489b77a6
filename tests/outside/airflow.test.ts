import {
	airFlow,
	displacement,
	idleAir,
	meanEffectivePressure,
	meanPistonSpeed,
	powerFromAir,
	torque,
	usualAirEfficiency,
} from '../../src/physics/airflow.ts';
import { dryAirDensity } from '../../src/physics/atmosphere.ts';
import { foot, horsepower, inch, poundForce, poundMass, published, usGallon } from './published.ts';

const litre = 1e-3;

published({
	what: 'air flow in g/s by litres, rpm, volumetric efficiency, kPa, K',
	source: 'Heywood, Internal Combustion Engine Fundamentals, ch. 2, speed-density',
	obtained: 'computed',
	within: { rel: 1e-4, why: 'gas constant 287.05 to 287.06' },
	rows: [
		[5.7, 5600, 0.85, 168.94757, 323.15, 411.7971],
		[6.2, 6000, 0.9, 98, 298.15, 319.4702],
		[4.8, 6000, 0.82, 83.4, 293.15, 195.0456],
	],
	found: (litres, rpm, volumetricEfficiency, pressure, temperature) =>
		1000 *
		airFlow({
			volumetricEfficiency: volumetricEfficiency!,
			density: dryAirDensity(pressure! * 1000, temperature!),
			displacement: litres! * litre,
			rpm: rpm!,
		}),
});

const bench =
	'eight-cylinder four-stroke test, 90 x 80 mm, IC-engine textbook companion, example 17.12: inputs and formulas';

published({
	what: 'displacement in litres by cylinders, bore mm, stroke mm',
	source: bench,
	obtained: 'computed',
	within: { rel: 1e-4, why: 'printed digits' },
	rows: [
		[8, 90, 80, 4.0715],
		[6, 86.0254, 86.0254, 3],
		[4, 120, 100, 4.52389],
	],
	found: (cylinders, bore, stroke) => displacement(cylinders!, bore! / 1000, stroke! / 1000) / litre,
});

published({
	what: 'brake mean effective pressure in bar by litres, rpm, N m',
	source: bench,
	obtained: 'computed',
	within: { rel: 1e-4, why: 'printed digits' },
	rows: [
		[4.0715, 4500, 222.4908, 6.867],
		[5.7, 4000, 475, 10.472],
	],
	found: (litres, rpm, newtonMetres) =>
		meanEffectivePressure((newtonMetres! * 2 * Math.PI * rpm!) / 60, litres! * litre, rpm!) / 1e5,
});

published({
	what: 'brake mean effective pressure in bar by litres, rpm, kW',
	source: 'IC-engine textbook companion, example 1.5: four cylinders 120 x 100 mm, 60 kW at 2000 rpm',
	obtained: 'computed',
	within: { rel: 1e-3, why: 'printed digits' },
	rows: [[4.52389, 2000, 60, 7.95775]],
	found: (litres, rpm, power) => meanEffectivePressure(power! * 1000, litres! * litre, rpm!) / 1e5,
});

published({
	what: 'brake mean effective pressure in kPa by litres, rpm, N m',
	source: 'Pulkrabek, Engineering Fundamentals of the IC Engine, Examples 2-1 and 2-2',
	obtained: 'memory',
	within: { abs: 1, why: 'last printed digit' },
	rows: [[3, 3600, 205, 859]],
	found: (litres, rpm, newtonMetres) =>
		meanEffectivePressure((newtonMetres! * 2 * Math.PI * rpm!) / 60, litres! * litre, rpm!) / 1000,
});

published({
	what: 'mean piston speed in m/s by stroke mm, rpm',
	source: 'Pulkrabek, Examples 2-1 and 2-2; textbook companion, example 1.5; 2 S N',
	obtained: 'memory',
	within: { rel: 5e-4, why: 'printed digits' },
	rows: [
		[86, 3600, 10.32],
		[100, 2000, 6.6666667],
		[3.622 * 25.4, 5600, 17.1731],
	],
	found: (stroke, rpm) => meanPistonSpeed(stroke! / 1000, rpm!),
});

published({
	what: 'torque in lb-ft by hp, rpm',
	source: 'identity P = 2 pi N T, 5252.113 = 33000 / (2 pi)',
	obtained: 'computed',
	within: { rel: 1e-6, why: 'printed digits' },
	rows: [
		[100, 5252.1131, 100],
		[276.4602, 4400, 330],
		[142.7997, 2500, 300],
	],
	found: (power, rpm) => torque(power! * horsepower, rpm!) / (poundForce * foot),
});

published({
	what: 'power in kW by air g/s, air-fuel ratio, MJ/kg, brake thermal efficiency',
	source:
		'textbook companion, examples 1.5 (4.7619 g/s of fuel at 15:1 make 60 kW) and 17.12 (104.85 kW): inputs and formulas',
	obtained: 'computed',
	within: { rel: 1e-4, why: 'printed digits' },
	rows: [
		[4.7619 * 15, 15, 42, 0.3, 60],
		[100, 6 / 0.44, 44, 104.8464 / 322.6667, 104.8464],
	],
	found: (air, stoichiometricRatio, heatingValue, airEfficiency) =>
		powerFromAir({
			airFlow: air! / 1000,
			stoichiometricRatio: stoichiometricRatio!,
			heatingValue: heatingValue! * 1e6,
			airEfficiency: airEfficiency!,
		}) / 1000,
});

// Specific consumption ties the usual air efficiencies to what dynamometers print: fuel = air / (lambda x 14.7).
published({
	what: 'brake specific fuel consumption in g/kWh by lambda, usual air efficiency, on petrol',
	source: 'common practice: 0.50 lb/hp h unboosted, 0.60 boosted, full load',
	obtained: 'memory',
	within: { rel: 1e-3, why: 'air efficiency is given to four digits' },
	rows: [
		[0.87, usualAirEfficiency.unboosted, 304.1],
		[0.8, usualAirEfficiency.boosted, 365],
	],
	found: (lambda, airEfficiency) => {
		const power = powerFromAir({
			airFlow: 1,
			stoichiometricRatio: 14.7,
			heatingValue: 43.44e6,
			airEfficiency: airEfficiency!,
		});
		return (1 / (lambda! * 14.7) / power) * 3.6e6 * 1000;
	},
});

published({
	what: 'displacement in cu in by cylinders, bore in, stroke in',
	source: 'trade figures of square V8s: pi/4 x bore^2 x stroke x 8, worked by hand',
	obtained: 'computed',
	within: { abs: 0.05, why: 'printed digits' },
	rows: [
		[8, 4, 3, 301.6],
		[8, 4, 3.48, 349.8],
		[8, 3.78, 3.622, 325.2],
	],
	found: (cylinders, bore, stroke) => displacement(cylinders!, bore! * inch, stroke! * inch) / inch ** 3,
});

published({
	what: 'hp of a pound of air a minute on petrol, by usual air efficiency',
	source: 'trade rule: 10 hp a pound of air a minute, 9 to 11',
	obtained: 'memory',
	within: { abs: 1.6, why: 'the rule gives 9 to 11; the usual figures lie on its low side by choice, spread -5/+20 %' },
	rows: [
		[usualAirEfficiency.unboosted, 10],
		[usualAirEfficiency.boosted, 10],
	],
	found: airEfficiency =>
		powerFromAir({
			airFlow: poundMass / 60,
			stoichiometricRatio: 14.7,
			heatingValue: 43.44e6,
			airEfficiency: airEfficiency!,
		}) / horsepower,
});

published({
	what: 'idle air in g/s by liters of displacement',
	source: 'trade rule: about 1 g/s a liter warm and without load, within a fifth; a measured 2.07 g/s on 1.8 liters',
	obtained: 'memory',
	within: { rel: 0.2, why: 'the rule gives a fifth' },
	rows: [
		[1, 1],
		[5, 5],
		[1.8, 2.07],
	],
	found: liters => 1000 * idleAir.usual * liters! * litre,
});

// By another way: the fuel that an idling car burns, at 14.7 to 1 and 745 g a liter.
published({
	what: 'idle fuel in US gal an hour by liters of displacement',
	source: 'US Department of Energy, idle fuel consumption without load: compact and large gasoline sedan',
	obtained: 'memory',
	within: { rel: 0.31, why: 'the spread of the usual value' },
	rows: [
		[2, 0.16],
		[4.6, 0.39],
	],
	found: liters => (idleAir.usual * liters! * litre * 3600) / 14.7 / 745 / usGallon,
});
