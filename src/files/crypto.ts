/** Loading it takes as long as printing the help does: done when something is hashed. */
export const crypto = () => process.getBuiltinModule('node:crypto');
