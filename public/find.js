// Shows of the list only what holds all the words that are written. Without it
// the sheet is the whole list, in the order of letters.
"use strict";
(() => {
  const find = document.getElementById("find");
  const words = document.getElementById("find-words");
  const count = document.getElementById("find-count");
  const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const things = [...document.querySelectorAll(".found > div")].map((at) => ({ at, text: plain(at.textContent) }));
  const letters = [...document.querySelectorAll(".letter")];
  const show = () => {
    const wanted = plain(words.value).split(/\s+/).filter(Boolean);
    let shown = 0;
    for (const { at, text } of things) {
      const fits = wanted.every((word) => text.includes(word));
      at.hidden = !fits;
      shown += fits ? 1 : 0;
    }
    for (const letter of letters) {
      letter.hidden = !letter.querySelector(".found > div:not([hidden])");
    }
    if (wanted.length === 0) {
      count.textContent = "";
    } else {
      count.textContent = shown === 0 ? find.dataset.none : find.dataset.some.replace("%", String(shown));
    }
  };
  words.addEventListener("input", show);
  words.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    const first = things.find(({ at }) => !at.hidden);
    if (first) first.at.querySelector("a").click();
  });
  find.hidden = false;
  show();
})();
