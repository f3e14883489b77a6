import { closedCycle } from '../../src/physics/cycle.ts';
import { inductionTime } from '../../src/physics/knock.ts';
import { constantGas } from '../support/constant-gas.ts';
import { film } from '../support/film.ts';
import { published } from './published.ts';

/**
 * The textbook's dimensionless engine, 10:1, gamma 1.4, heat 20 p1 V1, rod without end. Its wall area is A0 (1 + 1.5 V/V1),
 * which head, piston and liner of this model make at a stroke of 0.675 bores; its loss figure h is film A0 T1 / (p1 V1 w).
 */
const bore = 0.1;
const stroke = 0.0675;
const [p1, t1, speed] = [1e5, 300, 3000];
const v1 = (Math.PI / 4) * bore ** 2 * stroke * (10 / 9);
const heat = 20 * p1 * v1;

const gas = constantGas(1.4, 287.05);

function textbook(start: number, h: number) {
	const film = (h * p1 * v1 * ((speed * 2 * Math.PI) / 60)) / ((Math.PI / 2) * bore ** 2 * t1);
	return closedCycle({
		cylinder: { bore, stroke, rod: Number.POSITIVE_INFINITY, ratio: 10 },
		speed,
		shut: -180,
		opens: 180,
		pressure: p1,
		temperature: t1,
		charge: { unburnt: gas, burnt: gas, kept: 0 },
		burn: { start, duration: 40, heat },
		walls: { temperature: 1.2 * t1, film },
	});
}

const source =
	'case of Ferguson & Kirkpatrick, Internal Combustion Engines; integrated by scipy 1.10 solve_ivp at 1e-10';
const step = { rel: 1e-4, why: 'own step of 2 deg' };

published({
	what: 'highest pressure over p1 by start of burn deg and loss figure',
	source,
	obtained: 'computed',
	within: step,
	rows: [
		[-20, 0, 87.78226],
		[0, 0, 53.53263],
		[-20, 0.2, 85.83187],
	],
	found: (start, h) => textbook(start!, h!).peakPressure / p1,
});

published({
	what: 'highest pressure over p1 by start of burn deg, as printed',
	source: 'Ferguson & Kirkpatrick, Internal Combustion Engines',
	obtained: 'memory',
	within: { rel: 0.002, why: 'its steps of 1 deg' },
	rows: [[-20, 87.77]],
	found: start => textbook(start!, 0).peakPressure / p1,
});

published({
	what: 'deg after top of the highest pressure by start of burn deg and loss figure',
	source,
	obtained: 'computed',
	within: { abs: 0.05, why: 'found between steps of 2 deg' },
	rows: [
		[-20, 0, 10.81],
		[0, 0, 27.69],
		[-20, 0.2, 10.61],
	],
	found: (start, h) => textbook(start!, h!).peakAngle,
});

published({
	what: 'work over heat by start of burn deg and loss figure',
	source,
	obtained: 'computed',
	within: step,
	rows: [
		[-20, 0, 0.59574],
		[0, 0, 0.55487],
		[-20, 0.2, 0.52499],
	],
	found: (start, h) => textbook(start!, h!).work / heat,
});

published({
	what: 'mean pressure over p1 by start of burn deg and loss figure',
	source,
	obtained: 'computed',
	within: step,
	rows: [
		[-20, 0, 13.2386],
		[0, 0, 12.33034],
		[-20, 0.2, 11.66642],
	],
	found: (start, h) => textbook(start!, h!).meanPressure / p1,
});

published({
	what: 'induction ms by RON, atm, K',
	source: 'Douaud & Eyzat (1978) as in Heywood, coefficients from memory; closed form',
	obtained: 'computed',
	within: { rel: 1e-6, why: 'seven printed digits' },
	rows: [
		[95, 40, 800, 3.244104],
		[91, 50, 850, 1.450253],
		[100, 30, 750, 8.645727],
	],
	found: (ron, atmospheres, temperature) => 1000 * inductionTime(ron!, atmospheres! * 101325, temperature!),
});

/** The same relation with the pressure in bar. */
const filmByBar = (bore: number, bar: number, kelvin: number, speed: number) =>
	130 * bore ** -0.2 * bar ** 0.8 * kelvin ** -0.55 * speed ** 0.8;

published({
	what: 'film coefficient W/m2K by bore m, bar, K, gas speed m/s',
	source: 'Woschni as printed for bar, 130 B^-0.2 p^0.8 T^-0.55 w^0.8',
	obtained: 'memory',
	within: { rel: 0.002, why: '130 stands for 129.8' },
	rows: [
		[0.1, 1, 340, 26],
		[0.1, 20, 700, 26],
		[0.105, 55, 2300, 34],
	].map(([bore, bar, kelvin, speed]) => [bore!, bar!, kelvin!, speed!, filmByBar(bore!, bar!, kelvin!, speed!)]),
	found: (bore, bar, kelvin, speed) => film(bore!, bar! * 1e5, kelvin!, speed!),
});
