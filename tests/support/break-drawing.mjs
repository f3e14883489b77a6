// Loaded before the command by a test, never shipped: from the first resize on, the window's width is no number, and drawing breaks.
process.stdout.prependListener('resize', () => {
	Object.defineProperty(process.stdout, 'columns', { get: () => Symbol('broken on purpose') });
});
