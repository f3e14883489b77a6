/**
 * Where work is done, and what has to be open for it: on the bench with the engine out; in the engine bay; under the car on
 * stands; with the fuel pressure let down; with the transmission, the heads or the pan off; at the front of the car (radiator,
 * belts); at the tank; under the dash; at wheels, brakes and steering; on a drive; on paper.
 */
export const accesses = [
	'bench',
	'bay',
	'under',
	'rail',
	'transmission-out',
	'front',
	'heads-off',
	'pan-off',
	'tank',
	'dash',
	'wheel',
	'driving',
	'papers',
] as const;
export type Access = (typeof accesses)[number];
