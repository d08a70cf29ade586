// The page as a whole: it opens, says what it is and is not, and is held to its own files.
import { expect, test } from "./page.ts";

test("opens, names itself and carries the caution", async ({ page }) => {
  await page.goto("/");
  await expect(page).toHaveTitle(/Handspan/);
  await expect(page.getByText(/planning aid only/i).first()).toBeVisible();
});

test("sends one policy by header and by meta", async ({ page }) => {
  const response = await page.goto("/");
  const header = response?.headers()["content-security-policy"] ?? "";
  expect(header).toContain("default-src 'self'");
  expect(header).toContain("worker-src 'self'");
  const meta = page.locator('meta[http-equiv="Content-Security-Policy"]');
  const policy = await meta.getAttribute("content");
  expect(header).toBe(`${policy}; frame-ancestors 'none'`);
});

test("refuses a script written into the page", async ({ browser, baseURL }) => {
  // A page of its own: the refusal is logged as an error, which the shared page counts as a fault.
  const page = await browser.newPage();
  await page.goto(baseURL ?? "");
  const refused = await page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        document.addEventListener("securitypolicyviolation", (event) => resolve(event.effectiveDirective));
        const script = document.createElement("script");
        script.textContent = "document.title = 'ran'";
        document.head.append(script);
        setTimeout(() => resolve("nothing was refused"), 3000);
      }),
  );
  expect(refused).toMatch(/^script-src/);
  expect(await page.title()).not.toBe("ran");
  await page.close();
});
