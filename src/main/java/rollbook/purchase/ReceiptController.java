package rollbook.purchase;

import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.util.UriComponentsBuilder;
import rollbook.label.CodeList;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;

/** The page of a receipt, from where its labels are printed, and the form that takes it back. */
@Controller
@RequestMapping("/p/{production}/orders/{id:[0-9a-fA-F-]{36}}/receipts/{receiptId:[0-9a-fA-F-]{36}}")
class ReceiptController {
    private static final int LONGEST_REASON = 300;

    private final Orders orders;
    private final Receipts receipts;
    private final Display display;

    ReceiptController(Orders orders, Receipts receipts, Display display) {
        this.orders = orders;
        this.receipts = receipts;
        this.display = display;
    }

    /** Why a receipt is taken back, as typed. */
    record TakeBackForm(String reason, String version) {
        TakeBackForm {
            reason = reason == null ? "" : reason.strip();
            version = version == null ? "" : version.strip();
        }
    }

    @GetMapping
    ModelAndView show(Membership membership, @PathVariable UUID id, @PathVariable UUID receiptId) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        Receipt receipt = receipts.get(order, receiptId);
        return page("purchase/receipt", HttpStatus.OK, membership, order, receipt)
                .addObject("sentence", sentence(receipt))
                .addObject("labelsHref", labels(membership, receipt))
                .addObject("mayTakeBack", mayTakeBack(membership, order, receipt));
    }

    private String sentence(Receipt receipt) {
        return receipt.counts()
                ? display.text(
                        "purchase.receipt.sentence",
                        receipt.good(),
                        display.date(receipt.cameOn()),
                        receipt.damagedOrWrong())
                : display.text("purchase.receipt.sentence.taken-back");
    }

    private static String labels(Membership membership, Receipt receipt) {
        List<String> codes = receipt.items().stream().map(Receipt.Item::code).toList();
        return UriComponentsBuilder.fromPath(membership.path("media/labels"))
                .queryParam("items", "{items}")
                .encode()
                .buildAndExpand(CodeList.write(codes))
                .toUriString();
    }

    private static boolean mayTakeBack(Membership membership, PurchaseOrder order, Receipt receipt) {
        return receipt.counts() && order.takesReceipts() && membership.may(Role.WRANGLER, Role.OFFICE, Role.POST);
    }

    @GetMapping("/take-back")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView ask(Membership membership, @PathVariable UUID id, @PathVariable UUID receiptId) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        Receipt receipt = receipts.get(order, receiptId);
        return page("purchase/take-back-receipt", HttpStatus.OK, membership, order, receipt)
                .addObject("takeBackForm", new TakeBackForm("", Integer.toString(order.version())));
    }

    @PostMapping("/take-back")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView takeBack(
            Membership membership,
            @PathVariable UUID id,
            @PathVariable UUID receiptId,
            @ModelAttribute TakeBackForm form,
            BindingResult result,
            RedirectAttributes flash) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        Receipt receipt = receipts.get(order, receiptId);
        TypedFields fields = new TypedFields(result);
        fields.atMost("reason", form.reason(), LONGEST_REASON);
        if (form.reason().isEmpty()) {
            fields.wrong("reason", "purchase.problem.reason");
        }
        if (!fields.isSound()) {
            return page("purchase/take-back-receipt", HttpStatus.UNPROCESSABLE_CONTENT, membership, order, receipt);
        }
        receipts.takeBack(membership, id, receiptId, form.reason(), TypedFields.version(form.version()));
        flash.addFlashAttribute("notice", Notice.of("purchase.receipt.back.done", receipt.number()));
        return new ModelAndView("redirect:" + membership.path("orders/" + id));
    }

    private static ModelAndView page(
            String view, HttpStatus status, Membership membership, PurchaseOrder order, Receipt receipt) {
        return new ModelAndView(view, status)
                .addObject("order", order)
                .addObject("receipt", receipt)
                .addObject("base", membership.path("orders/" + order.id()))
                .addObject("here", membership.path("orders/" + order.id() + "/receipts/" + receipt.id()));
    }
}
