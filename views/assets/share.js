// For the page to share: copies its text, and turns its picture into one that every forum takes.
// Plain script; without it the files are downloaded and the text is selected by hand.
(() => {
  const says = document.querySelector("[data-copy-says]");
  const copy = document.querySelector("[data-copies]");
  copy.hidden = false;
  copy.addEventListener("click", async () => {
    const text = document.getElementById(copy.dataset.copies);
    try {
      await navigator.clipboard.writeText(text.value);
      says.textContent = copy.dataset.says;
    } catch {
      text.focus();
      text.select();
      says.textContent = copy.dataset.fails;
    }
  });

  const png = document.querySelector("[data-png]");
  png.hidden = false;
  png.addEventListener("click", async () => {
    const picture = document.getElementById("share-picture");
    await picture.decode();
    const canvas = document.createElement("canvas");
    canvas.width = 2 * picture.naturalWidth;
    canvas.height = 2 * picture.naturalHeight;
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    canvas.toBlob((blob) => {
      const link = document.createElement("a");
      link.href = URL.createObjectURL(blob);
      link.download = png.dataset.png;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    }, "image/png");
  });
})();
