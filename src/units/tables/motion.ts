import { foot, mile, milePerHour } from '../defined.ts';
import { unitTable } from '../unit.ts';

export const angle = unitTable('angle', { deg: { factor: 1, also: ['degs', 'degree', 'degrees'] } });

export const rotation = unitTable('rotation', {
	rpm: { factor: 1, also: ['rev/min', 'revs/min', 'r/min', '1/min', 'revs', 'revolutions/minute'] },
});

export const velocity = unitTable('velocity', {
	'ft/s': { factor: foot, partner: 'm/s', also: ['ft/sec', 'fps', 'feet/second'] },
	'ft/min': { factor: foot / 60, partner: 'm/s', also: ['fpm', 'feet/minute'] },
	mph: { factor: milePerHour, partner: 'km/h', also: ['mi/h', 'miles/hour'] },
	'km/h': { factor: 1 / 3.6, partner: 'mph', also: ['kph', 'kmh', 'km/hr', 'kmph'] },
	'm/s': { factor: 1, partner: 'ft/s', also: ['m/sec', 'metres/second', 'meters/second'] },
});

export const time = unitTable('time', {
	ms: { factor: 1e-3, also: ['msec', 'millisec', 'millisecond', 'milliseconds'] },
	us: { factor: 1e-6, also: ['usec', 'microsec', 'microsecond', 'microseconds'] },
	s: { factor: 1, also: ['sec', 'secs', 'second', 'seconds'] },
});

export const days = unitTable('days', { days: { factor: 1, also: ['day', 'd'] } });

export const pulses = unitTable('pulses', {
	'pulses/mi': { factor: 1 / mile, partner: 'pulses/km', also: ['pulses/mile', 'pulse/mile', 'p/mi', 'ppm'] },
	'pulses/km': {
		factor: 1e-3,
		partner: 'pulses/mi',
		also: ['pulse/km', 'p/km', 'pulses/kilometre', 'pulses/kilometer'],
	},
	'pulses/m': { factor: 1, partner: 'pulses/mi', also: ['pulses/metre', 'pulses/meter'] },
});
