import { heating, roadLoad, shaftPower, slaveTravel, speedSymbols, stopEnergy } from '../../src/physics/vehicle.ts';
import { foot, horsepower, mile, poundForce, published } from './published.ts';

published({
	what: 'how much warmer brakes get, K, by energy in J, mass in kg, specific heat in J/kgK',
	source: 'OpenStax, College Physics, section 14.2: a truck of 10,000 kg down 75.0 m heats 100 kg of brakes by 92 degC',
	obtained: 'memory',
	within: { abs: 0.5, why: 'printed to a degree' },
	rows: [[10_000 * 9.8 * 75, 100, 800, 92]],
	found: (energy, mass, heat) => heating(energy!, mass!, heat!),
});

published({
	what: 'energy of a car in ft lbf by weight in lbf and speed in mph',
	source: 'common practice: weight x mph^2 / 29.9, as brake texts have it',
	obtained: 'memory',
	within: { rel: 2e-3, why: 'three figures of the constant' },
	rows: [
		[3000, 60, (3000 * 60 ** 2) / 29.9],
		[4000, 100, (4000 * 100 ** 2) / 29.9],
	],
	found: (weight, speed) => stopEnergy((weight! * poundForce) / 9.80665, (speed! * mile) / 3600) / (foot * poundForce),
});

published({
	what: 'force of a slave cylinder in N by force on the master, bores in cm: what it gains in force it loses in travel',
	source: 'OpenStax, College Physics, example 11.6: 500 N on 0.500 cm give 1.25e4 N on 2.50 cm',
	obtained: 'memory',
	within: { rel: 1e-9, why: 'exact' },
	rows: [[500, 0.5, 2.5, 1.25e4]],
	found: (force, master, slave) => force! / slaveTravel(1, master!, slave!),
});

published({
	what: 'power in hp by torque in lb-ft and rpm',
	source: 'common practice: torque x rpm / 5252',
	obtained: 'memory',
	within: { rel: 1e-4, why: 'four figures of the constant' },
	rows: [[300, 2200, (300 * 2200) / 5252]],
	found: (torque, speed) => shaftPower(torque! * foot * poundForce, speed!) / horsepower,
});

published({
	what: 'power at the wheels in kW by mass in kg, speed in km/h, grade, drag area in m2',
	source: 'Gillespie, Fundamentals of Vehicle Dynamics, ch. 4, worked out by hand: rolling 0.012, air 1.2 kg/m3',
	obtained: 'computed',
	within: { rel: 1e-3, why: 'rounded by hand' },
	rows: [
		// 4000 kg at 90 km/h: 39227 N x 0.052 = 2040 N; 0.6 x 2.5 x 25^2 = 938 N; together 2977 N x 25 m/s.
		[4000, 90, 0.04, 2.5, 74.4],
		// 1500 kg at 72 km/h on the flat: 176.5 N + 0.6 x 0.7 x 400 = 168 N; 344.5 N x 20 m/s.
		[1500, 72, 0, 0.7, 6.89],
	],
	found: (mass, speed, grade, area) => roadLoad(mass!, speed! / 3.6, grade!, area!) / 1000,
});

published({
	what: 'speed symbols of tires in mph',
	source: 'tables of tire dealers: Q 99, R 106, S 112, T 118, H 130, V 149, W 168, Y 186',
	obtained: 'memory',
	within: { abs: 0.7, why: 'rounded mph' },
	rows: [99, 106, 112, 118, 130, 149, 168, 186].map((mph, index) => [index, mph]),
	found: index => Object.values(speedSymbols)[index!]! / 0.44704,
});
