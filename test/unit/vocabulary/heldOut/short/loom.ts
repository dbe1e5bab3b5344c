import type { Short } from './short';

/** Prefixes, a stylesheet, a document type, comments, character data, groups in groups, and an empty one. */
export const loom: Short = {
  text: `<?xml version="1.0" encoding="utf-8"?>
<?xml-stylesheet type="text/css" href="cloth.css"?>
<!DOCTYPE w:cloth SYSTEM "cloth.dtd">
<!-- woven by hand -->
<w:cloth xmlns:w="urn:example:cloth" xmlns:m="urn:example:notes">
  <m:about><m:author>nobody</m:author><m:made when="2021-04-05"/></m:about>
  <w:warp title="muted strings" velocity-min="1" velocity-max="70">
    <w:warp title="low ones" loudness="80%">
      <w:weft><w:recording><![CDATA[strings/E2 & thumb.wav]]></w:recording>
        <w:from-key>40</w:from-key><w:to-key>44</w:to-key><w:root-key>40</w:root-key></w:weft>
      <!-- a spare one -->
      <w:weft><w:recording><![CDATA[strings/A2.wav]]></w:recording>
        <w:from-key>45</w:from-key><w:to-key>49</w:to-key><w:root-key>45</w:root-key></w:weft>
    </w:warp>
    <w:warp title="nothing yet"/>
  </w:warp>
  <w:warp title="open strings" velocity-min="71" velocity-max="127">
    <w:weft><w:recording>strings/D3.wav</w:recording>
      <w:from-key>40</w:from-key><w:to-key>52</w:to-key><w:root-key>50</w:root-key></w:weft>
  </w:warp>
</w:cloth>
`,
  regions: [
    {
      group_label: 'low ones',
      lovel: 1,
      hivel: 70,
      volume: -1.9382,
      sample: 'strings/E2 & thumb.wav',
      lokey: 40,
      hikey: 44,
      pitch_keycenter: 40,
    },
    {
      group_label: 'low ones',
      lovel: 1,
      hivel: 70,
      volume: -1.9382,
      sample: 'strings/A2.wav',
      lokey: 45,
      hikey: 49,
      pitch_keycenter: 45,
    },
    {
      group_label: 'open strings',
      lovel: 71,
      hivel: 127,
      sample: 'strings/D3.wav',
      lokey: 40,
      hikey: 52,
      pitch_keycenter: 50,
    },
  ],
  open: [],
};
