import { measured } from '../measured.ts';
import { inRun } from '../quantity.ts';

export const pressure = inRun({
	id: 'log.ambient_pressure',
	kind: 'absolute-pressure',
	unit: 'Pa',
	formula:
		"pressure of the air outside: as logged, else the manifold's with the engine still, else that of the sheet's altitude",
	gather() {
		let [found, error] = [Number.NaN, 0];
		return {
			take({ ambient, declared }) {
				found = ambient ?? found;
				error = declared.sensor_error.manifold;
			},
			result: () => measured(found, found * error, ['ambient_pressure', 'manifold_pressure']),
		};
	},
});
