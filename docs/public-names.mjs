// What the docs build asks of public names beyond TypeDoc's own checks. The columns of a printed table are properties of a
// literal, where no comment can stand: they explain themselves, so `requiredToBeDocumented` leaves properties to this.
import { IntrinsicType, ReflectionKind } from "typedoc";

/** Called by TypeDoc. */
export function load(app) {
  app.on("validateProject", (project) => {
    for (const property of project.getReflectionsByKind(ReflectionKind.Property)) {
      if (property.parent?.kindOf(ReflectionKind.ClassOrInterface) && !property.hasComment()) {
        app.logger.validationWarning(`${property.getFullName()}: what is it?`);
      }
    }
    for (const signature of project.getReflectionsByKind(ReflectionKind.CallSignature)) {
      if (!isDocumented(signature)) continue;
      const name = signature.getFullName();
      for (const parameter of signature.parameters ?? []) {
        if (!parameter.hasComment()) {
          app.logger.validationWarning(`${name}: what is ${parameter.name}?`);
        }
      }
      const isVoid = signature.type instanceof IntrinsicType && signature.type.name === "void";
      if (!isVoid && !signature.comment?.getTag("@returns")) {
        app.logger.validationWarning(`${name}: what does it return?`);
      }
    }
  });
}

/** Functions and the methods of classes; a method of an interface is told by its first sentence. */
function isDocumented({ parent }) {
  return (
    parent?.kindOf(ReflectionKind.Function) ||
    (parent?.kindOf(ReflectionKind.Method) && parent.parent?.kindOf(ReflectionKind.Class))
  );
}
