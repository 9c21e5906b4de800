import '../../src-main/require-node.cjs';

/** Loaded before any test: the check of the Node version ends a run on one that is too old. */
export default function requireNode(): void {}
