import { chargeOf } from '../../src/physics/charge.ts';
import { laminarVelocity } from '../../src/physics/flame.ts';
import { gammaAt } from '../../src/physics/gas.ts';
import { species } from '../../src/physics/species.ts';
import { published } from './published.ts';

const kinds = ['CO2', 'H2O', 'CO', 'H2', 'O2', 'N2'] as const;

published({
	what: 'molar heat over the gas constant of CO2, H2O, CO, H2, O2, N2 (0 to 5) by K',
	source: 'Cantera 3.2.0, gri30.yaml (NASA polynomials of the GRI-Mech 3.0 set)',
	obtained: 'computed',
	within: { rel: 0.015, why: 'an older table; steam above 2000 K has been revised by 1 to 2 %' },
	rows: [
		[0, 400, 4.9646],
		[0, 1000, 6.5333],
		[0, 2000, 7.2595],
		[1, 400, 4.1215],
		[1, 1000, 4.9666],
		[1, 2000, 6.2243],
		[2, 400, 3.533],
		[2, 1000, 3.9886],
		[2, 2500, 4.4279],
		[3, 700, 3.5293],
		[3, 1500, 3.8823],
		[3, 2500, 4.3119],
		[4, 400, 3.6228],
		[4, 1500, 4.399],
		[4, 2500, 4.6794],
		[5, 700, 3.6905],
		[5, 1500, 4.1861],
		[5, 2500, 4.4075],
	],
	found: (kind, kelvin) => {
		const { cool, hot } = species[kinds[kind!]!];
		return (kelvin! > 1000 ? hot : cool).reduce((sum, c, n) => sum + c * kelvin! ** n, 0);
	},
});

const mixture = 'Cantera 3.2.0, nasa_gas.yaml: isooctane and toluene 60:40 by mole for gasoline, 6 % residual';

published({
	what: 'gamma of the unburnt charge by lambda, K',
	source: mixture,
	obtained: 'computed',
	within: { abs: 0.003, why: 'another stand-in for gasoline' },
	rows: [
		[0.8, 400, 1.3333],
		[0.8, 725, 1.2833],
		[0.8, 1000, 1.2566],
		[0.87, 400, 1.337],
		[0.87, 600, 1.3047],
		[0.87, 725, 1.2878],
		[0.87, 900, 1.2691],
		[1, 400, 1.3427],
		[1, 725, 1.2947],
		[1, 1000, 1.268],
	],
	found: (lambda, kelvin) => gammaAt(chargeOf(lambda!, 0, 0.06).unburnt, kelvin!),
});

published({
	what: 'gamma of the unburnt charge by K: the straight line 1.3665 - 1.06e-4 T, which reproduces the true integral',
	source: 'fit to NASA and textbook properties of a gasoline charge, where the end gas is when it counts',
	obtained: 'memory',
	within: { abs: 0.003, why: 'a straight line, for one mixture' },
	rows: [700, 800, 900].map(kelvin => [kelvin, 1.3665 - 1.06e-4 * kelvin]),
	found: kelvin => gammaAt(chargeOf(0.87, 0, 0.06).unburnt, kelvin!),
});

published({
	what: 'gamma of an ethanol charge at lambda 0.85 without residual, by K',
	source: 'Cantera 3.2.0, nasa_gas.yaml, C2H5OH',
	obtained: 'computed',
	within: { abs: 0.007, why: 'the textbook gives ethanol vapor 8 % more heat at 400 K' },
	rows: [
		[400, 1.3321],
		[725, 1.2779],
		[1000, 1.2507],
	],
	found: kelvin => gammaAt(chargeOf(0.85, 1, 0).unburnt, kelvin!),
});

published({
	what: 'gamma of the burnt gas, composition of 1700 K held, by lambda, K',
	source: mixture,
	obtained: 'computed',
	within: { abs: 0.004, why: 'water-gas balance held at 3.5' },
	rows: [
		[0.8, 1500, 1.2766],
		[0.8, 2500, 1.2534],
		[0.87, 2000, 1.2581],
		[1, 1500, 1.2669],
		[1, 2500, 1.2448],
	],
	found: (lambda, kelvin) => gammaAt(chargeOf(lambda!, 0, 0.06).burnt, kelvin!),
});

published({
	what: 'gas constant J/kgK, unburnt (0) and burnt (1) by lambda',
	source: mixture,
	obtained: 'computed',
	within: { rel: 0.002, why: 'another stand-in for gasoline' },
	rows: [
		[0, 0.8, 273.37],
		[0, 1, 275.47],
		[1, 0.8, 301.15],
		[1, 0.87, 295.68],
		[1, 1, 287.5],
	],
	found: (burnt, lambda) => chargeOf(lambda!, 0, 0.06)[burnt ? 'burnt' : 'unburnt'].constant,
});

published({
	what: 'heat that a kg of air sets free, over that at lambda 1, by lambda',
	source: 'Cantera 3.2.0, nasa_gas.yaml: unburnt at 298.15 K less burnt in equilibrium at 1700 K and then cooled',
	obtained: 'computed',
	within: { rel: 0.015, why: 'water-gas balance held at 3.5; another stand-in for gasoline' },
	rows: [
		[0.75, 2.6749 / 2.9838],
		[0.8, 2.7506 / 2.9838],
		[0.87, 2.8443 / 2.9838],
		[0.95, 2.9374 / 2.9838],
		[1.1, 2.7135 / 2.9838],
	],
	found: lambda => (43.44e6 - chargeOf(lambda!, 0, 0.06).kept) / lambda! / 43.44e6,
});

published({
	what: 'laminar burning velocity of gasoline m/s at 298 K, 1 atm by lambda',
	source: 'Rhodes & Keck as in Heywood, table 9.3: highest 0.305 m/s at an equivalence ratio of 1.21',
	obtained: 'memory',
	within: { rel: 1e-3, why: 'closed form' },
	rows: [
		[1 / 1.21, 0.305],
		[1, 0.305 - 0.549 * 0.21 ** 2],
	],
	found: lambda => laminarVelocity({ pressure: 101325, temperature: 298, lambda: lambda!, residual: 0, ethanol: 0 }),
});
