// Computed pictures on the page, read pixel by pixel.

/** Pixels across a picture that is as fine as it is shown at last. */
export const FINE = 480;

export const run = (page, script, ...args) => page.driver.executeScript(script, ...args);

/** All pixels of the picture, in one number. */
export const PICTURE = `const canvas = document.querySelector(".panel-picture");
  const data = new Uint32Array(canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height).data.buffer);
  let sum = canvas.width;
  for (const pixel of data) sum = (Math.imul(sum, 31) + pixel) | 0;
  return sum;`;
export const picture = (page) => run(page, PICTURE);

export const fine = (page) =>
  page.until("the fine picture", () => run(page, "return document.querySelector('.panel-picture').width === arguments[0]", FINE));

/** Waits for another picture than that one; gives it. */
export const other = (page, than) =>
  page.until("another picture", async () => {
    const now = await picture(page);
    return now !== than && now;
  });
