/* A sign beside each verdict, so that colour is not all that tells it. */

export const SIGNS = { fits: "✓", "fits-with": "✓+", marginal: "≈", unknown: "?", stop: "✕", "does-not-fit": "✕", fails: "✕" };
