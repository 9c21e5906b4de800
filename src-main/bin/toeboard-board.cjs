#!/usr/bin/env node
// The board of an installed package, in a browser's window; where it runs already, it is opened again.
require('./on-own-node.cjs').runOnOwnNode('loopback-main.js', ['--reopen']);
