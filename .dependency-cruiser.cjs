// The borders between the rooms, each with its reason. Data flows one way:
// sheet -> quantities (evaluated by graph) -> log -> fit, plugs -> rulebook -> audit -> report, with the interview beside it; faces
// and commands come last.
const rooms = [
	'text',
	'units',
	'physics',
	'expressions',
	'graph',
	'sheet',
	'quantities',
	'log',
	'fit',
	'plugs',
	'rulebook',
	'wording',
	'audit',
	'report',
	'interview',
];

/** A pure room may import those before it in the list; never one after it. */
const noLookingAhead = rooms.map((room, index) => ({
	name: `${room}-looks-ahead`,
	comment: `${room} comes before ${rooms.slice(index + 1).join(', ') || 'the faces'}: data flows one way, so that each room can be read and tested without the ones after it`,
	severity: 'error',
	from: { path: `^src/${room}/` },
	to: { path: `^src/(${[...rooms.slice(index + 1), 'files', 'tui', 'plain', 'cli', 'build'].join('|')})/` },
}));

module.exports = {
	forbidden: [
		...noLookingAhead,
		{
			name: 'leaf-imports-a-room',
			comment:
				'text, units, physics and expressions are leaves: they stand alone, so that a formula can be checked against a book without the rest',
			severity: 'error',
			from: { path: '^src/(text|units|physics|expressions)/' },
			to: { path: '^src/', pathNot: '^src/$1/' },
		},
		{
			name: 'table-knows-the-job',
			comment: 'table turns bytes into columns and knows no car: it can be tested alone, and any table is read by it',
			severity: 'error',
			from: { path: '^src/table/' },
			to: { path: '^src/', pathNot: '^src/table/' },
		},
		{
			name: 'graph-knows-the-car',
			comment:
				'the graph evaluates whatever nodes it is given: of other rooms it takes outcomes, the search for a root and what a formula refuses',
			severity: 'error',
			from: { path: '^src/graph/' },
			to: { path: '^src/', pathNot: '^src/(graph/|expressions/tree|physics/(solve|range|bounded)\\.ts)' },
		},
		{
			name: 'quantity-reads-a-sheet',
			comment:
				'a file of the model declares quantities: what answers are is the business of the adapter beside it, how they are evaluated that of the graph',
			severity: 'error',
			from: { path: '^src/quantities/model/' },
			to: {
				path: '^src/',
				pathNot: '^src/(physics|units)/|^src/quantities/(model/|quantity|bounded)|^src/graph/(bounded|reader)\\.ts',
			},
		},
		{
			name: 'fit-sampler-knows-the-car',
			comment:
				'what draws from a posterior knows unknowns and residuals alone: it is held against closed forms and other algorithms without a car',
			severity: 'error',
			from: {
				path: '^src/fit/(agreement|effective-draws|hamiltonian|matrix|mean-point|mode|posterior|problem|random|shared-variance|leading-directions|steps|straightened|surrogate)\\.ts',
			},
			to: {
				path: '^src/',
				pathNot:
					'^src/fit/(effective-draws|hamiltonian|matrix|mean-point|mode|problem|random|leading-directions|steps|straightened|surrogate)\\.ts|^src/graph/latin-hypercube\\.ts',
			},
		},
		{
			name: 'pure-room-touches-the-machine',
			comment:
				'pure rooms know no disk, clock, process or chance: dates, seeds and hashes are handed in, so that the same sheet gives the same bytes anywhere',
			severity: 'error',
			from: { path: `^src/(${[...rooms, 'table', 'log'].join('|')})/` },
			to: { dependencyTypes: ['core'] },
		},
		{
			name: 'files-knows-the-job',
			comment: 'files moves bytes and knows nothing of sheets, so that its promises can be tested alone',
			severity: 'error',
			from: { path: '^src/files/' },
			to: { path: '^src/', pathNot: '^src/files/' },
		},
		{
			name: 'disk-outside-files',
			comment:
				'what is read and written passes through files, which promises to lose nothing; only the build has its own hands on the disk',
			severity: 'error',
			from: { path: '^src/', pathNot: '^src/(files|build)/' },
			to: { path: '^(node:)?fs(/promises)?$', dependencyTypes: ['core'] },
		},
		{
			name: 'drawing-outside-the-drawn-face',
			comment: 'only tui imports ink and react: every other command starts without them',
			severity: 'error',
			from: { path: '^src/', pathNot: '^src/tui/' },
			to: { path: 'node_modules/(ink|react)/' },
		},
		{
			name: 'faces-know-each-other',
			comment: 'each face stands on the interview alone: a second face proves the split',
			severity: 'error',
			from: { path: '^src/(tui|plain)/' },
			to: { path: '^src/(tui|plain|cli|build)/', pathNot: '^src/$1/' },
		},
		{
			name: 'grammar-outside-the-compiler',
			comment:
				'yaml and the expression grammar are needed to compile rules, never to judge: an audit starts without them',
			severity: 'error',
			from: { path: '^src/', pathNot: '^src/rulebook/compile/' },
			to: { path: 'node_modules/(yaml|@marcbachmann)/' },
		},
		{
			name: 'circle',
			comment: 'files that import each other cannot be read one after the other',
			severity: 'error',
			from: {},
			to: { circular: true },
		},
	],
	options: {
		tsPreCompilationDeps: true,
		tsConfig: { fileName: 'tsconfig.json' },
		doNotFollow: { path: 'node_modules' },
		enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
	},
};
