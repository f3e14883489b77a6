import { quantity } from '../quantity.ts';

export const unlistedPins = quantity({
	id: 'harness.unlisted_pins',
	label: 'pins not listed yet',
	kind: 'count',
	inputs: [
		'harness.vehicle_plug',
		'harness.vehicle_plug_pins',
		'harness.gearbox_plug',
		'harness.gearbox_plug_pins',
		'harness.circuits',
	],
	range: [null, null],
	formula:
		'pins of the vehicle and transmission plugs that do not simply mate - rows of the wiring worksheet; below 0 there are rows to spare',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const vehicle = q.choice('harness.vehicle_plug') === 'mates' ? 0 : q.number('harness.vehicle_plug_pins');
		const gearbox = q.choice('harness.gearbox_plug') === 'mates' ? 0 : q.number('harness.gearbox_plug_pins');
		if (vehicle + gearbox === 0) return null;
		return vehicle + gearbox - (q.list('harness.circuits')?.length ?? Number.NaN);
	},
});
