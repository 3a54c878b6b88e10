// How `make lint` reads the site's scripts: modules, for phones of some years; the site carries them as classic scripts.
import js from "@eslint/js";
import globals from "globals";

export default [
  js.configs.recommended,
  {
    files: ["site_overrides/**/*.js"],
    languageOptions: { sourceType: "module", ecmaVersion: 2020, globals: globals.browser },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      "array-callback-return": "error",
      "arrow-body-style": ["error", "as-needed"],
      "consistent-return": "error",
      "default-case-last": "error",
      eqeqeq: "error",
      "no-control-regex": "off", // they are looked for on purpose
      "no-eval": "error",
      "no-implied-eval": "error",
      "no-loop-func": "error",
      "no-undef-init": "error",
      "no-unused-expressions": "error",
      "no-use-before-define": ["error", { functions: false, classes: false, variables: false }],
      "no-unused-vars": ["error", { caughtErrors: "none" }],
      "no-var": "error",
      "object-shorthand": "error",
      "prefer-arrow-callback": "error",
      "prefer-const": "error",
      "prefer-object-spread": "error",
      "prefer-spread": "error",
      "no-restricted-syntax": [
        "error",
        { selector: "Literal[regex.pattern=/\\(\\?<[=!]/]", message: "Looking behind in an expression stops old phones." },
      ],
      // text of a record is text: nothing makes markup of it
      "no-restricted-properties": [
        "error",
        ...["innerHTML", "outerHTML", "insertAdjacentHTML", "write"].map((property) => ({ property })),
      ],
    },
  },
];
