import { mile } from '../../units/defined.ts';
import { quantity } from '../quantity.ts';

/** m: first look, first oil change, and from there on every 3000 miles. Common practice. */
const [first, second, every] = [100, 500, 3000].map(miles => miles * mile) as [number, number, number];

export const nextCheck = quantity({
	id: 'build.next_check_in',
	label: 'distance to the next check',
	kind: 'distance',
	inputs: ['build.miles_since_first_drive'],
	formula: {
		us: 'from the miles driven to 100, 500 and then each 3000 miles after that',
		metric: 'from the distance driven to 160, 800 and then each 4800 km after that',
	},
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const driven = q.number('build.miles_since_first_drive');
		if (driven < first) return first - driven;
		return driven < second ? second - driven : every - ((driven - second) % every);
	},
});
