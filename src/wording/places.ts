import type { Access } from '../sheet/access.ts';

/** Where work is, as a builder says it; what has to be open for it. */
export const placeWords: Readonly<Record<Access, string>> = {
	bench: 'On the bench, engine out',
	bay: 'In the engine bay',
	under: 'Under the car, on stands',
	rail: 'At the fuel rail, pressure let down',
	'transmission-out': 'Transmission out',
	front: 'At the front: radiator, belts',
	'heads-off': 'Heads off',
	'pan-off': 'Oil pan off',
	tank: 'At the fuel tank',
	dash: 'Inside, at the dash',
	wheel: 'Wheels, brakes, steering',
	driving: 'On a drive',
	papers: 'At the desk',
};
