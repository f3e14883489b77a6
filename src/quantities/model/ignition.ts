import type { Cylinder } from '../../physics/slider-crank.ts';
import { gasDensityAtSpark, requiredVoltage, sparkMargin } from '../../physics/spark.ts';
import { percent, quantity } from '../quantity.ts';

export const density = quantity({
	id: 'ignition.gas_density_at_spark',
	label: 'gas density at the spark',
	kind: 'ratio',
	inputs: [
		'engine.cylinder',
		'boost.manifold_pressure',
		'boost.charge_temp',
		'engine.intake_closes',
		'ignition.full_load_advance',
	],
	formula: '(manifold pressure / 101325)(293 / charge temperature) V(intake closing) / V(spark)',
	source: ['geometry', 'ideal-gas'],
	nature: 'exact',
	compute: q => {
		const cylinder = q.made<Cylinder>('engine.cylinder');
		const manifold = { pressure: q.number('boost.manifold_pressure'), temperature: q.number('boost.charge_temp') };
		const closes = q.number('engine.intake_closes');
		const advance = q.number('ignition.full_load_advance');
		return cylinder ? gasDensityAtSpark(cylinder, manifold, closes, advance) : undefined;
	},
});

export const required = quantity({
	id: 'ignition.required_voltage',
	label: 'spark voltage needed',
	kind: 'voltage',
	inputs: ['ignition.gas_density_at_spark', 'ignition.gap'],
	formula: '1000 (24.22 x + 6.08 sqrt x), x = gas density x gap in cm',
	source: ['naidu'],
	nature: 'estimate',
	compute: q => requiredVoltage(q.number('ignition.gas_density_at_spark'), q.number('ignition.gap')),
});

export const margin = quantity({
	id: 'ignition.spark_margin',
	label: 'spark margin',
	shown: percent,
	kind: 'ratio',
	inputs: ['ignition.capacity', 'ignition.required_voltage'],
	range: [-1, null],
	formula: "capacity / required voltage - 1: the figure to judge; never compare the kilovolts with a catalog's",
	source: ['definition'],
	nature: 'exact',
	compute: q => sparkMargin(q.number('ignition.capacity'), q.number('ignition.required_voltage')),
});
