import { airFlow } from '../../src/physics/airflow.ts';
import { fuelFlow } from '../../src/physics/fuels.ts';
import { duty, injectorFlow, injectorFlowNeeded, pulseWidth } from '../../src/physics/injector.ts';
import { poundMass, psi, published } from './published.ts';

const poundsHour = poundMass / 3600;

published({
	what: 'injector flow in lb/h by rated lb/h, rated psi, psi across',
	source: 'Bernoulli: flow goes with the root of the pressure',
	obtained: 'computed',
	within: { rel: 1e-6, why: 'printed digits' },
	rows: [
		[26, 43.5, 58, 30.02221],
		[26, 43.5, 30, 21.59182],
		[42, 43.5, 43.5, 42],
		[60, 43.5, 50, 64.32675],
		[36, 58, 43.5, 31.17691],
		[1, 43.5, 33.5, 0.8775619],
	],
	found: (rated, at, across) => injectorFlow(rated! * poundsHour, at! * psi, across! * psi) / poundsHour,
});

// Trade rule: power = flow x injectors x duty / specific consumption; dead time is not in it.
const rule = 'trade rule: hp = lb/h x injectors x duty / (lb/hp h), without dead time';
const job = (power: number, consumption: number, injectors: number, rpm: number) => ({
	fuelFlow: power * consumption * poundsHour,
	injectors,
	rpm,
	deadTime: 0,
});

published({
	what: 'duty by hp, lb/hp h, injectors, rpm, lb/h',
	source: rule,
	obtained: 'memory',
	within: { rel: 1e-9, why: 'arithmetic' },
	rows: [
		[408, 0.5, 8, 5500, 30, 0.85],
		[400, 0.6, 8, 6000, 42, (400 * 0.6) / (8 * 42)],
		[200, 0.5, 4, 4500, 36, (200 * 0.5) / (4 * 36)],
	],
	found: (power, consumption, injectors, rpm, flow) =>
		duty(pulseWidth(job(power!, consumption!, injectors!, rpm!), flow! * poundsHour), rpm!),
});

published({
	what: 'flow needed in lb/h by hp, lb/hp h, injectors, rpm, duty limit',
	source: rule,
	obtained: 'memory',
	within: { rel: 1e-9, why: 'arithmetic' },
	rows: [
		[408, 0.5, 8, 5500, 0.85, 30],
		[480, 0.6, 8, 6000, 0.8, 45],
		[200, 0.5, 4, 4500, 0.8, 31.25],
	],
	found: (power, consumption, injectors, rpm, limit) =>
		injectorFlowNeeded(job(power!, consumption!, injectors!, rpm!), limit!) / poundsHour,
});

published({
	what: 'pulse width in ms by kW, g/kWh, injectors, rpm, dead time ms, g/s',
	source: 'definition, worked by hand: 120 / rpm x fuel / injectors / flow + dead time',
	obtained: 'computed',
	within: { rel: 1e-9, why: 'arithmetic' },
	rows: [
		[240, 300, 8, 6000, 1, 3.125, 17],
		[120, 300, 8, 3000, 1, 2.5, 21],
		[36, 360, 8, 4000, 0.8, 4, 4.175],
	],
	found: (power, consumption, injectors, rpm, dead, flow) => {
		const fuelFlow = (power! * consumption!) / 3600 / 1000;
		return 1000 * pulseWidth({ fuelFlow, injectors: injectors!, rpm: rpm!, deadTime: dead! / 1000 }, flow! / 1000);
	},
});

// The other road: what one cylinder holds by the molar gas law, its fuel, and the time that the fuel takes.
const molar = (filling: number, pressure: number, kelvin: number, litres: number) =>
	(filling * pressure * litres * 1e-3 * 0.028965) / (8.31446 * kelvin);

published({
	what: 'pulse width in ms by filling, kPa, K, litres a cylinder, air to fuel, g/s, dead time ms',
	source: 'molar gas law for one cylinder (8.31446 J/mol K, 28.965 g/mol), its fuel over the flow; evaluated here',
	obtained: 'computed',
	within: { rel: 2e-4, why: 'gas constant 287.05 to 287.06' },
	rows: [
		[0.8, 100, 295, 0.45, 14.7, 3.8727, 0],
		[0.85, 168.9, 323, 0.7125, 11.76, 5.3, 1],
		[0.9, 95, 310, 0.6, 12.8, 2.8, 0.8],
	].map(row => {
		const [filling, kPa, kelvin, litres, ratio, flow, dead] = row as [
			number,
			number,
			number,
			number,
			number,
			number,
			number,
		];
		const fuel = molar(filling, kPa * 1000, kelvin, litres) / ratio;
		return [...row, 1000 * (fuel / (flow / 1000)) + dead];
	}),
	found: (filling, kPa, kelvin, litres, ratio, flow, dead) => {
		const air = airFlow({
			volumetricEfficiency: filling!,
			density: (kPa! * 1000) / (287.05 * kelvin!),
			displacement: 8 * litres! * 1e-3,
			rpm: 5200,
		});
		const whole = { fuelFlow: fuelFlow(air, 1, ratio!), injectors: 8, rpm: 5200, deadTime: dead! / 1000 };
		return 1000 * pulseWidth(whole, flow! / 1000);
	},
});
