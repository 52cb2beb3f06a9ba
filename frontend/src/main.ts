import { mount } from "svelte";
import "../css/tokens.css";
import "../css/look.css";
import "../css/studio.css";
import "../css/write.css";
import "../css/designs.css";
import "../css/hand.css";
import App from "./App.svelte";

const target = document.getElementById("app");
if (target) mount(App, { target });
