import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    testTimeout: 20_000,
    // All cores: on two of them the usual choice would leave one idle.
    maxWorkers: "100%",
    coverage: { include: ["src/**", "commands/**"] },
  },
});
