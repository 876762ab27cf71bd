// Reads task data with an independent reader of the standard and prints what it understood as JSON.
const { readFileSync } = require('fs');
const { ISOXMLManager } = require('isoxml');

const manager = new ISOXMLManager();
manager.parseISOXMLFile(new Uint8Array(readFileSync(process.argv[2])), 'application/zip').then(() => {
  const root = manager.rootElement.attributes;
  const designator = reference => reference && reference.entity.attributes;
  console.log(JSON.stringify({
    warnings: manager.getWarnings(),
    version: root.VersionMajor,
    partfields: (root.Partfield || []).map(field => ({
      name: field.attributes.PartfieldDesignator,
      area: field.attributes.PartfieldArea,
      shape: field.toGeoJSON(),
      polygons: field.attributes.PolygonnonTreatmentZoneonly.length,
    })),
    tasks: (root.Task || []).map(task => {
      const grid = task.attributes.Grid[0];
      const zones = {};
      for (const zone of task.attributes.TreatmentZone) {
        const variable = zone.attributes.ProcessDataVariable[0].attributes;
        zones[zone.attributes.TreatmentZoneCode] = {
          ddi: variable.ProcessDataDDI,
          value: variable.ProcessDataValue,
          product: designator(variable.ProductIdRef).ProductDesignator,
        };
      }
      return {
        name: task.attributes.TaskDesignator,
        partfield: designator(task.attributes.PartfieldIdRef).PartfieldDesignator,
        customer: designator(task.attributes.CustomerIdRef).CustomerLastName,
        farm: designator(task.attributes.FarmIdRef).FarmDesignator,
        status: task.attributes.TaskStatus,
        lost: task.attributes.PositionLostTreatmentZoneCode,
        outside: task.attributes.OutOfFieldTreatmentZoneCode,
        zones,
        grid: { ...grid.attributes },
        cells: Buffer.from(grid.binaryData).toString('base64'),
      };
    }),
  }));
}).catch(error => {
  console.error(error);
  process.exit(1);
});
