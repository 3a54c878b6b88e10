// How `make lint` reads the site's scripts: classic ones, one function each, with the words of old scripts (hence `var`), for phones of some years.
// `module` and `require` are there where Node runs them in tests.
import js from "@eslint/js";
import globals from "globals";

export default [
  js.configs.recommended,
  {
    files: ["site_overrides/**/*.js"],
    languageOptions: { sourceType: "script", ecmaVersion: 2020, globals: { ...globals.browser, module: "writable", require: "readonly" } },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      "array-callback-return": "error",
      "consistent-return": "error",
      "default-case-last": "error",
      eqeqeq: "error",
      "no-control-regex": "off", // they are looked for on purpose
      "no-eval": "error",
      "no-implied-eval": "error",
      "no-loop-func": "error",
      "no-undef-init": "error",
      "no-unused-expressions": "error",
      "no-use-before-define": ["error", { functions: false, variables: false }],
      "no-unused-vars": ["error", { caughtErrors: "none" }],
      "no-restricted-syntax": [
        "error",
        { selector: "Literal[regex.pattern=/\\(\\?<[=!]/]", message: "Looking behind in an expression stops old phones." },
      ],
      strict: ["error", "function"],
      // text of a record is text: nothing makes markup of it
      "no-restricted-properties": [
        "error",
        ...["innerHTML", "outerHTML", "insertAdjacentHTML", "write"].map((property) => ({ property })),
      ],
    },
  },
];
