import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The page is served under a policy that allows nothing inline, so nothing may be put into the HTML or turned into data: addresses. */
export default defineConfig(({ command }) => {
  // A build asked for by a test must be the one players get: the test runner's own NODE_ENV would make it React's slow one.
  if (command === 'build') process.env.NODE_ENV = 'production';
  return {
    root: 'renderer',
    base: './',
    plugins: [react()],
    build: {
      outDir: '../dist/renderer',
      emptyOutDir: true,
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      target: 'chrome130',
      // One local file: nothing is gained by loading it in pieces.
      chunkSizeWarningLimit: 1500,
    },
  };
});
